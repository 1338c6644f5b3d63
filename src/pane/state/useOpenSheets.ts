import { useCallback, useEffect, useMemo, useRef, useState } from "react";
import type { Host } from "../../host/host";
import { type ByHand, logOn } from "../givenTables";
import { isStocked, NO_SHEETS, OpenSheetReader, type OpenSheets } from "../openSheets";
import type { useRunSheets } from "./useRunSheets";
import type { ReadTables } from "./useTables";

/** The run sheets that are not logged: what they take is planned already. */
export function useOpenSheets(
  host: Host,
  { sheets, active }: Pick<ReturnType<typeof useRunSheets>, "sheets" | "active">,
  tables: ReadTables,
  byHand: ByHand | undefined,
  onError: (error: unknown) => void,
) {
  const reader = useMemo(() => new OpenSheetReader(host), [host]);
  const [open, setOpen] = useState(NO_SHEETS);
  // The sheets are looked for after the tables were read: with them all is new.
  const newest = useRef({ tables, byHand });
  newest.current = { tables, byHand };
  const isKnown = byHand !== undefined;
  useEffect(() => {
    const { tables, byHand } = newest.current;
    if (!isKnown || !byHand) return;
    let isLast = true;
    const found = isStocked(tables) ? reader.read(logOn(tables, byHand), sheets, active) : Promise.resolve(NO_SHEETS);
    found.then((now) => {
      // The plan is worked out anew for each other one.
      if (isLast) setOpen((before) => (isSame(before, now) ? before : now));
    }, onError);
    return () => {
      isLast = false;
    };
  }, [reader, sheets, active, isKnown, onError]);
  const readNow = useCallback(
    async (read: ReadTables, kept: ByHand): Promise<OpenSheets> =>
      isStocked(read) ? reader.read(logOn(read, kept)) : NO_SHEETS,
    [reader],
  );
  return { open, readNow };
}

const isSame = (one: OpenSheets, other: OpenSheets): boolean => keyOf(one) === keyOf(other);
const keyOf = ({ runs, unread }: OpenSheets): string =>
  JSON.stringify([
    unread,
    runs.map(({ lot, date, unit, pots }) => [lot, date, unit, pots.map(({ id, parts, lines }) => [id, parts, lines])]),
  ]);
