import type { Host } from "../../host/host";
import type { RunPlan } from "../../runsheet/plan/runPlan";
import { compareRuns } from "../../runsheet/record/compareRuns";
import { openRun } from "../../runsheet/record/openRun";
import type { PouredRun } from "../../runsheet/record/poured";
import { readBack } from "../../runsheet/record/readBack";
import { plainNumbers } from "../../runsheet/sheet/plainNumbers";
import type { Log } from "../../runsheet/tables/runsLog";
import { WRITTEN } from "../words/written";

/** A sentence and a list. */
export interface Part {
  readonly says: string;
  readonly list: readonly string[];
}

/** What is told about one run sheet. */
export interface Report {
  readonly sheet: string;
  readonly parts: readonly Part[];
  /** What must be pressed for before it is added. */
  readonly ask?: {
    /** What was shown, by which it is known whether it is still the same. */
    readonly shown: string;
    readonly press: string;
    readonly offersMoves: boolean;
    readonly beginsMoves: boolean;
  };
}

/** A run sheet as it stands on its sheet now. */
export async function readRun(host: Host, sheet: string): Promise<PouredRun> {
  const read = readBack(await host.readSheet(sheet));
  if (!read) throw new Error(WRITTEN.noRunSheet(sheet));
  return read;
}

/**
 * What a new plan changes of a run that is written; `fresh` names the sheet that the new one was written on, and says
 * how much of the old one is logged.
 */
export function changesOf(sheet: string, old: PouredRun, now: RunPlan, fresh?: { to: string; log: Log }): Report {
  const begin = fresh ? WRITTEN.isNew(fresh.to, sheet, loggedOf(old, fresh.log)) : "";
  const about = fresh?.to ?? sheet;
  if (old.unplanned.length > 0) {
    return { sheet: about, parts: [{ says: begin + WRITTEN.notCompared(sheet), list: old.unplanned }] };
  }
  const list = compareRuns(old, now);
  const says = begin + (list.length === 0 ? WRITTEN.unchanged : WRITTEN.changes(sheet));
  return { sheet: about, parts: [{ says, list }] };
}

/** How much of a run is logged. */
function loggedOf(run: PouredRun, log: Log): "none" | "some" | "all" {
  const isLogged = log.rows.some(({ lot }) => lot === run.lot);
  if (!isLogged) return "none";
  return openRun(run, log, run.unit) ? "some" : "all";
}

/** Turns the formulas of a run sheet into the numbers they give; says so. */
export async function toPlainNumbers(host: Host, sheet: string): Promise<string> {
  const cells = plainNumbers(await host.readSheet(sheet));
  if (cells.length === 0) throw new Error(WRITTEN.plainAlready(sheet));
  await host.write(sheet, cells);
  return WRITTEN.plainNow(sheet);
}
