import type { Host } from "../../host/host";
import type { Run } from "../../runsheet/plan/makeRun";
import { isError } from "../../runsheet/problem";
import type { Settings } from "../../runsheet/settings";
import { givenTables, type RowsLeft } from "../givenTables";
import type { OpenSheets } from "../openSheets";
import { type Planner, planOf } from "../planner";
import type { Kept } from "../state/kept";
import type { ReadTables } from "../state/useTables";
import { WRITING } from "../words/writing";

/** The open workbook as the pane's work needs it. */
export interface Book {
  readonly host: Host;
  readonly planner: Planner;
  readonly kept: Kept | undefined;
  /** Undefined while one is wrong. */
  readonly settings: Settings | undefined;
  readonly rowsLeft: RowsLeft;
  readonly keep: (change: (kept: Kept) => Kept) => void;
  /** The run sheets that are not logged, as they stand now. */
  readonly openSheets: (read: ReadTables, kept: Kept) => Promise<OpenSheets>;
  /** Reads the tables anew. */
  readonly refresh: () => Promise<ReadTables>;
}

/** The tables as they are now, and the run they make: what is written is what stands there, not what was drawn. */
export async function freshRun({ planner, kept, settings, rowsLeft, openSheets, refresh }: Book): Promise<{
  read: ReadTables;
  run: Run;
}> {
  const read = await refresh();
  const given = kept && givenTables(read, kept, rowsLeft);
  const run = given && settings && (await planOf(planner, given, settings, await openSheets(read, kept), kept.counts));
  if (!run || run.problems.some(isError)) throw new Error(WRITING.changed);
  return { read, run };
}
