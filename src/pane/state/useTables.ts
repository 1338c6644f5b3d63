import { useCallback, useEffect, useRef, useState } from "react";
import type { Host, Source, SourceRows } from "../../host/host";
import { sameName } from "../../runsheet/sameName";
import {
  matchColumns,
  missingFields,
  TABLE_TYPE_IDS,
  TABLE_TYPES,
  type TableTypeId,
  tableName,
} from "../../runsheet/tables/registry";
import type { TableType } from "../../runsheet/tables/tableType";
import { TABLES } from "../words/tables";

/** What was chosen by hand for a kind of table: a table's name, a selected range, or none. */
type Choice = string | Source | null;

/** The chosen tables with their rows. */
export type ReadTables = Readonly<Partial<Record<TableTypeId, SourceRows>>>;

/** The tables of the workbook and the rows of those chosen, read again after every change. */
export function useTables(host: Host, onError: (error: unknown) => void) {
  const [sources, setSources] = useState<readonly Source[]>();
  const [tables, setTables] = useState<ReadTables>({});
  const choices = useRef<Partial<Record<TableTypeId, Choice>>>({});
  const turn = useRef(0);

  /** Reads all anew; rejects when that fails. */
  const refresh = useCallback(async (): Promise<ReadTables> => {
    const mine = ++turn.current;
    const found = await host.tables();
    const read: Partial<Record<TableTypeId, SourceRows>> = {};
    const known = new Map<string, SourceRows>();
    const rowsOf = async (source: Source): Promise<SourceRows> => {
      const rows = (source.name !== "" && known.get(source.name)) || (await host.read(source));
      known.set(source.name, rows);
      return rows;
    };
    for (const kind of TABLE_TYPE_IDS) {
      const choice = choices.current[kind];
      const source = pick(kind, choice, found);
      if (source) read[kind] = await rowsOf(source);
    }
    if (mine === turn.current) {
      // What is poured from stays what it is, also when another table comes to fit better, and when it goes.
      const { pour } = choices.current;
      if (pour === undefined && read.pour) choices.current.pour = read.pour.name;
      if (typeof pour === "string" && !read.pour) {
        choices.current.pour = null;
        onError(new Error(TABLES.gone(pour)));
      }
      setSources(found);
      setTables(read);
    }
    return read;
  }, [host, onError]);

  useEffect(() => {
    const follow = () => refresh().catch(onError);
    void follow();
    let waiting: ReturnType<typeof setTimeout>;
    const stop = host.onChange(() => {
      clearTimeout(waiting);
      waiting = setTimeout(follow, 200);
    });
    return () => {
      clearTimeout(waiting);
      stop();
    };
  }, [host, refresh, onError]);

  const choose = useCallback(
    (kind: TableTypeId, choice: Choice | undefined) => {
      choices.current[kind] = choice;
      return refresh();
    },
    [refresh],
  );

  return { sources, tables, refresh, choose };
}

/**
 * The table for a kind: the one chosen by hand; else, to pour from, the one that tells most of all that tell what is
 * needed (the log of what was poured is none), and for the others the one that bears the kind's name.
 */
function pick(kind: TableTypeId, choice: Choice | undefined, sources: readonly Source[]): Source | undefined {
  if (choice === null || typeof choice === "object") return choice ?? undefined;
  const named = sources.find(({ name }) => name === choice);
  if (named || (kind === "pour" && choice !== undefined)) return named;
  // One that lacks a column is taken up too: it must not be passed over without a word.
  if (kind !== "pour") {
    const { isKnownBy } = TABLE_TYPES[kind] as TableType;
    const own = sources.find(({ name }) => sameName(name) === sameName(tableName(kind)));
    return own ?? sources.find(({ headings }) => isKnownBy?.(headings));
  }
  // Rows without a weight are filled from the table of vessels: one that has weights goes before.
  const vessels = pick("vessels", undefined, sources);
  const isFilled =
    vessels !== undefined && missingFields("vessels", matchColumns("vessels", vessels.headings)).length === 0;
  const log = pick("log", undefined, sources);
  const fitting = sources.flatMap((source) => {
    const columns = matchColumns("pour", source.headings);
    const missing = missingFields("pour", columns);
    const fits = source !== log && missing.every((group) => isFilled && group.includes("fill"));
    return fits ? [{ source, lacks: missing.length, known: Object.keys(columns).length }] : [];
  });
  return fitting.sort((a, b) => a.lacks - b.lacks || b.known - a.known)[0]?.source;
}
