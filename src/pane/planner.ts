import { buildRun } from "../runsheet/buildRun";
import type { Beside } from "../runsheet/plan/beside";
import type { Run } from "../runsheet/plan/makeRun";
import { readLog } from "../runsheet/record/readLog";
import { rejectShare } from "../runsheet/record/rejectShare";
import { runCandles } from "../runsheet/record/runCandles";
import type { Settings } from "../runsheet/settings";
import type { Tables } from "../runsheet/tables/tableRows";
import type { GivenTables } from "./givenTables";
import { serialOf, today } from "./today";

/** Works out the run that tables make. */
export type Planner = (tables: Tables, settings: Settings, beside?: Beside) => Promise<Run>;

/** At once, where the caller is. */
export const planHere: Planner = async (tables, settings, beside) => buildRun(tables, settings, beside);

/** The run that these tables make, with what is to be said of columns that are gone. */
export async function planOf(planner: Planner, { read, tables, lost }: GivenTables, settings: Settings): Promise<Run> {
  const rejects = read.log && rejectShare(runCandles(readLog(read.log)));
  const run = await planner(tables, settings, { today: serialOf(today()), rejects });
  return lost.length === 0 ? run : { ...run, problems: [...run.problems, ...lost] };
}
