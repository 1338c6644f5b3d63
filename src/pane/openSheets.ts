import type { Host } from "../host/host";
import { loggedPots } from "../runsheet/record/loggedPots";
import type { PouredRun } from "../runsheet/record/poured";
import { readBack } from "../runsheet/record/readBack";
import { type RunSheet, runSheetsOf } from "../runsheet/record/runSheets";
import type { Log } from "../runsheet/tables/runsLog";
import type { ReadTables } from "./state/useTables";

/** The run sheets that are not logged, or not known to be logged whole, as they stand. */
export interface OpenSheets {
  /** The newest last; of sheets that carry one lot the first. */
  readonly runs: readonly PouredRun[];
  /** The names of those that cannot be read, or not all of their plan. */
  readonly unread: readonly string[];
}

export const NO_SHEETS: OpenSheets = { runs: [], unread: [] };

/** Whether any table says what is on hand: else nobody asks what other runs take of it. */
export const isStocked = ({ moves, items, stock }: ReadTables): boolean => Boolean(moves ?? items ?? stock);

/**
 * Reads the run sheets that are not logged. Cells change where the maker is, so each is read when it is new and while
 * it is shown: many that were never logged do not slow the pane down.
 */
export class OpenSheetReader {
  private readonly known = new Map<string, PouredRun>();
  private shown = "";

  constructor(private readonly host: Host) {}

  async read(log: Log, sheets?: readonly RunSheet[], active?: string): Promise<OpenSheets> {
    const all = sheets ?? runSheetsOf(await this.host.firstCells());
    const now = active ?? (await this.host.activeSheet());
    const changed = new Set([this.shown, now]);
    this.shown = now;
    const first = [...new Map([...all].reverse().map((sheet) => [sheet.lot, sheet])).values()].reverse();
    const runs: PouredRun[] = [];
    const unread: string[] = [];
    for (const sheet of first) {
      if (loggedPots(log, sheet.lot) === undefined) continue;
      const run = await this.runOn(sheet, changed.has(sheet.name));
      if (run) runs.push(run);
      if (!run || run.unplanned.length > 0) unread.push(sheet.name);
    }
    return { runs, unread };
  }

  private async runOn({ name, lot }: RunSheet, isChanged: boolean): Promise<PouredRun | undefined> {
    const key = JSON.stringify([name, lot]);
    const before = this.known.get(key);
    if (before && !isChanged) return before;
    // One that cannot be read keeps nobody from planning: it is named.
    const run = await this.host.readSheet(name).then(readBack, () => undefined);
    if (run) this.known.set(key, run);
    else this.known.delete(key);
    return run;
  }
}
