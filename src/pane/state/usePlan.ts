import { useEffect, useRef, useState } from "react";
import type { Run } from "../../runsheet/plan/makeRun";
import type { Settings } from "../../runsheet/settings";
import type { GivenTables } from "../givenTables";
import type { OpenSheets } from "../openSheets";
import { type Planner, planOf } from "../planner";
import type { Kept } from "./kept";

/** A run with what it was worked out from: what it says of rows is true of these tables. */
export interface Planned {
  readonly run: Run;
  readonly given: GivenTables;
  readonly settings: Settings;
}

/**
 * The run that these tables make, worked out anew after each change: one plan at a time, and of the changes in the
 * meantime only the last. Until the first has come, without a table to pour from, and while a setting is wrong, there
 * is none.
 */
export function usePlan(
  planner: Planner,
  given: GivenTables | undefined,
  settings: Settings | undefined,
  open: OpenSheets,
  counts: Kept["counts"] | undefined,
  onError: (error: unknown) => void,
): Planned | undefined {
  const [planned, setPlanned] = useState<Planned>();
  const newest = useRef(0);
  const before = useRef(Promise.resolve());
  useEffect(() => {
    const mine = ++newest.current;
    if (!given || !settings || !counts) return;
    const work = async () => {
      if (mine !== newest.current) return;
      const run = await planOf(planner, given, settings, open, counts);
      if (mine === newest.current) setPlanned({ run, given, settings });
    };
    before.current = before.current.then(work).catch(onError);
    return () => {
      newest.current++;
    };
  }, [planner, given, settings, open, counts, onError]);
  return given && settings ? planned : undefined;
}
