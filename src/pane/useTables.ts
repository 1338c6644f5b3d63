import { useCallback, useEffect, useRef, useState } from "react";
import type { Host, Source, SourceRows } from "../host/host";
import { KINDS, type KindName, matchColumns, missingRoles } from "../runsheet/kinds";

const KIND_NAMES = Object.keys(KINDS) as KindName[];

/** What was chosen by hand for a kind of table: a table's name, a selected range, or none. */
type Choice = string | Source | null;

export type ReadTables = Readonly<Partial<Record<KindName, SourceRows>>>;

/** The tables of the workbook and the rows of those chosen, read again after every change. */
export function useTables(host: Host, onError: (error: unknown) => void) {
  const [sources, setSources] = useState<readonly Source[]>();
  const [tables, setTables] = useState<ReadTables>({});
  const choices = useRef<Partial<Record<KindName, Choice>>>({});
  const turn = useRef(0);

  const refresh = useCallback(async (): Promise<ReadTables | undefined> => {
    const mine = ++turn.current;
    try {
      const found = await host.tables();
      const read: Partial<Record<KindName, SourceRows>> = {};
      const known = new Map<string, SourceRows>();
      for (const kind of KIND_NAMES) {
        const source = pick(kind, choices.current[kind], found);
        if (!source) continue;
        const rows = (source.name !== "" && known.get(source.name)) || (await host.read(source));
        known.set(source.name, rows);
        read[kind] = rows;
      }
      if (mine === turn.current) {
        setSources(found);
        setTables(read);
      }
      return read;
    } catch (error) {
      onError(error);
      return undefined;
    }
  }, [host, onError]);

  useEffect(() => {
    void refresh();
    let waiting: ReturnType<typeof setTimeout>;
    const stop = host.onChange(() => {
      clearTimeout(waiting);
      waiting = setTimeout(refresh, 200);
    });
    return () => {
      clearTimeout(waiting);
      stop();
    };
  }, [host, refresh]);

  const choose = useCallback(
    (kind: KindName, choice: Choice) => {
      choices.current[kind] = choice;
      return refresh();
    },
    [refresh],
  );

  const takeSelection = useCallback(async () => {
    try {
      await choose("pour", await host.selection());
    } catch (error) {
      onError(error);
    }
  }, [host, choose, onError]);

  return { sources, tables, refresh, choose, takeSelection };
}

/**
 * The table for a kind: the one chosen by hand; else, to pour from, the one that tells most of what is needed, and
 * for the others the one that bears the kind's name.
 */
function pick(kind: KindName, choice: Choice | undefined, sources: readonly Source[]): Source | undefined {
  if (choice === null || typeof choice === "object") return choice ?? undefined;
  const named = sources.find(({ name }) => name === choice);
  if (named) return named;
  if (kind !== "pour") {
    return sources.find(
      ({ name, headings }) =>
        name.toLowerCase() === KINDS[kind].name.toLowerCase() &&
        missingRoles(kind, matchColumns(kind, headings)).length === 0,
    );
  }
  const scored = sources.map((source) => {
    const columns = matchColumns("pour", source.headings);
    return { source, missing: missingRoles("pour", columns).length, known: Object.keys(columns).length };
  });
  scored.sort((a, b) => a.missing - b.missing || b.known - a.known);
  return scored[0]?.source;
}
