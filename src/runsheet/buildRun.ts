import type { CellValue } from "../sheet/sheet";
import { type Columns, missingRoles, ROLE_NAMES } from "./columns";
import { planRun, type RunPlan } from "./planRun";
import { type Problem, readRows } from "./readRows";
import type { Settings } from "./settings";

/** What comes of a table as it is now: a plan of the rows that are right, and everything there is to say about it. */
export interface Run {
  readonly plan: RunPlan;
  /** What stops comes first, each kind in the order of the rows. */
  readonly problems: readonly Problem[];
}

/** From the rows of a table to a plan. Where a column is missing, the plan is empty and the problem says which. */
export function buildRun(rows: readonly (readonly CellValue[])[], columns: Columns, settings: Settings): Run {
  const missing = missingRoles(columns).map((role) => ({
    role,
    text: `${ROLE_NAMES[role]}: no column is chosen${role === "fill" ? ", nor one with the water weight" : ""}`,
    stops: true,
  }));
  const read = missing.length > 0 ? { rows: [], problems: missing } : readRows(rows, columns, settings);
  const { plan, problems } = planRun(read.rows, settings);
  const all: Problem[] = [...read.problems, ...problems];
  if (all.length === 0 && plan.totals.candles === 0) {
    all.push({ role: "quantity", text: "Quantity: no row has one; write how many candles to pour", stops: true });
  }
  all.sort((a, b) => Number(b.stops) - Number(a.stops) || (a.row ?? -1) - (b.row ?? -1));
  return { plan, problems: all };
}
