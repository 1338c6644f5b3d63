import { useEffect, useRef, useState } from "react";
import type { Run } from "../../runsheet/plan/makeRun";
import type { Settings } from "../../runsheet/settings";
import type { RowsLeft } from "../givenTables";
import { type Planner, planOf } from "../planner";
import type { Kept } from "./kept";
import type { ReadTables } from "./useTables";

/** A run with the tables it was worked out from: what it says of rows is true of these. */
export interface Planned {
  readonly run: Run;
  readonly read: ReadTables;
}

/**
 * The run of the tables as they were read last, worked out anew after each change: one plan at a time, and of the
 * changes in the meantime only the last. Until the first has come, and while a setting is wrong, there is none.
 */
export function usePlan(
  planner: Planner,
  read: ReadTables,
  kept: Kept | undefined,
  settings: Settings | undefined,
  rowsLeft: RowsLeft,
  onError: (error: unknown) => void,
): Planned | undefined {
  const [planned, setPlanned] = useState<Planned>();
  const newest = useRef(0);
  const before = useRef(Promise.resolve());
  useEffect(() => {
    const mine = ++newest.current;
    if (!kept || !settings) return;
    const work = async () => {
      if (mine !== newest.current) return;
      const run = await planOf(planner, read, kept, settings, rowsLeft);
      if (mine === newest.current) setPlanned(run && { run, read });
    };
    before.current = before.current.then(work).catch(onError);
    return () => {
      newest.current++;
    };
  }, [planner, read, kept, settings, rowsLeft, onError]);
  return settings && read.pour ? planned : undefined;
}
