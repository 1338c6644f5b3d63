import { buildRun } from "../runsheet/buildRun";
import type { Beside } from "../runsheet/plan/beside";
import type { Run } from "../runsheet/plan/makeRun";
import { openRun } from "../runsheet/record/openRun";
import { rejectShare } from "../runsheet/record/rejectShare";
import { runCandles } from "../runsheet/record/runCandles";
import type { Settings } from "../runsheet/settings";
import { readTable } from "../runsheet/tables/readTables";
import { NO_LOG } from "../runsheet/tables/runsLog";
import type { Tables } from "../runsheet/tables/tableRows";
import type { GivenTables } from "./givenTables";
import type { OpenSheets } from "./openSheets";
import type { Kept } from "./state/kept";
import { serialOf, today } from "./today";

/** Works out the run that tables make. */
export type Planner = (tables: Tables, settings: Settings, beside?: Beside) => Promise<Run>;

/** At once, where the caller is. */
export const planHere: Planner = async (tables, settings, beside) => buildRun(tables, settings, beside);

/** The run that these tables make beside those that are written, with what is to be said of columns that are gone. */
export async function planOf(
  planner: Planner,
  { tables, lost, openFittings }: GivenTables,
  settings: Settings,
  { runs, unread }: OpenSheets,
  counts: Kept["counts"],
): Promise<Run> {
  const log = readTable(tables.log, settings.unit) ?? NO_LOG;
  const rejects = rejectShare(runCandles(log));
  const openRuns = runs.flatMap((one) => {
    const open = openRun(one, log, settings.unit);
    return open ? [{ ...open, counts: counts[open.lot] }] : [];
  });
  const run = await planner(tables, settings, { today: serialOf(today()), rejects, openRuns, openFittings, unread });
  return lost.length === 0 ? run : { ...run, problems: [...run.problems, ...lost] };
}
