import { buildRun } from "../runsheet/buildRun";
import type { Run } from "../runsheet/plan/makeRun";
import type { Settings } from "../runsheet/settings";
import type { Tables } from "../runsheet/tables/tableRows";
import { givenTables, type RowsLeft } from "./givenTables";
import type { Kept } from "./state/kept";
import type { ReadTables } from "./state/useTables";

/** Works out the run that tables make. */
export type Planner = (tables: Tables, settings: Settings) => Promise<Run>;

/** At once, where the caller is. */
export const planHere: Planner = async (tables, settings) => buildRun(tables, settings);

/** The run that these tables make; undefined where there is none to pour from. */
export async function planOf(
  planner: Planner,
  read: ReadTables,
  kept: Kept,
  settings: Settings,
  rowsLeft: RowsLeft,
): Promise<Run | undefined> {
  const given = givenTables(read, kept, rowsLeft);
  if (!given) return undefined;
  const run = await planner(given.tables, settings);
  return given.lost.length === 0 ? run : { ...run, problems: [...run.problems, ...given.lost] };
}
