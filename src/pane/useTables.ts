import { useCallback, useEffect, useRef, useState } from "react";
import type { Host, Source, SourceRows } from "../host/host";
import { matchColumns, missingRoles } from "../runsheet/columns";

/** The tables of the workbook and the rows of the chosen one, read again after every change. */
export function useTables(host: Host, onError: (error: unknown) => void) {
  const [sources, setSources] = useState<readonly Source[]>();
  const [rows, setRows] = useState<SourceRows>();
  /** A table's name or a selected range; undefined until chosen by hand: then the best fitting table is taken. */
  const chosen = useRef<string | Source | undefined>();
  const turn = useRef(0);

  const refresh = useCallback(async (): Promise<SourceRows | undefined> => {
    const mine = ++turn.current;
    try {
      const found = await host.tables();
      const wanted = chosen.current;
      const source = typeof wanted === "object" ? wanted : (found.find(({ name }) => name === wanted) ?? bestOf(found));
      const read = source && (await host.read(source));
      if (mine !== turn.current) return read; // a later reading is under way
      setSources(found);
      setRows(read);
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
    (name: string) => {
      // The empty name stands for the selected range that is shown already.
      if (name !== "") chosen.current = name;
      return refresh();
    },
    [refresh],
  );

  const takeSelection = useCallback(async () => {
    try {
      const selected = await host.selection();
      chosen.current = selected;
      setRows(selected);
    } catch (error) {
      onError(error);
    }
  }, [host, onError]);

  return { sources, rows, refresh, choose, takeSelection };
}

/** The table that tells most of what a run sheet needs. */
function bestOf(sources: readonly Source[]): Source | undefined {
  const scored = sources.map((source) => {
    const columns = matchColumns(source.headings);
    return { source, missing: missingRoles(columns).length, known: Object.keys(columns).length };
  });
  scored.sort((a, b) => a.missing - b.missing || b.known - a.known);
  return scored[0]?.source;
}
