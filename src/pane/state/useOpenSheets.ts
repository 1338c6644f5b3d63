import { useCallback, useEffect, useMemo, useRef, useState } from "react";
import type { Host } from "../../host/host";
import { NO_LOG, readLog } from "../../runsheet/record/readLog";
import { isStocked, NO_SHEETS, OpenSheetReader, type OpenSheets } from "../openSheets";
import type { useRunSheets } from "./useRunSheets";
import type { ReadTables } from "./useTables";

/** The run sheets that are not logged: what they take is planned already. */
export function useOpenSheets(
  host: Host,
  { sheets, active }: Pick<ReturnType<typeof useRunSheets>, "sheets" | "active">,
  tables: ReadTables,
  onError: (error: unknown) => void,
) {
  const reader = useMemo(() => new OpenSheetReader(host), [host]);
  const [open, setOpen] = useState(NO_SHEETS);
  // The sheets are looked for after the tables were read: with them all is new.
  const newest = useRef(tables);
  newest.current = tables;
  useEffect(() => {
    const { current: tables } = newest;
    let isLast = true;
    const found = isStocked(tables) ? reader.read(logOf(tables), sheets, active) : Promise.resolve(NO_SHEETS);
    found.then((now) => {
      // The plan is worked out anew for each other one.
      if (isLast) setOpen((before) => (isSame(before, now) ? before : now));
    }, onError);
    return () => {
      isLast = false;
    };
  }, [reader, sheets, active, onError]);
  const readNow = useCallback(
    async (read: ReadTables): Promise<OpenSheets> => (isStocked(read) ? reader.read(logOf(read)) : NO_SHEETS),
    [reader],
  );
  return { open, readNow };
}

const logOf = ({ log }: ReadTables) => (log ? readLog(log) : NO_LOG);

const isSame = (one: OpenSheets, other: OpenSheets): boolean => keyOf(one) === keyOf(other);
const keyOf = ({ runs, unread }: OpenSheets): string =>
  JSON.stringify([
    unread,
    runs.map(({ lot, date, unit, pots }) => [lot, date, unit, pots.map(({ id, parts, lines }) => [id, parts, lines])]),
  ]);
