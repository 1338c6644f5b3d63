import type { Problem } from "../../problem";
import type { Settings } from "../../settings";
import type { Scents } from "../../tables/scents";
import type { PourRow } from "../pourRows";
import { nameOf, type ScentRun } from "../runPlan";
import { highLoad, overLimits, uncounted } from "./limits";

/** Loads over their limits, limits that are not known, and flash points: all beside the first row of a scent. */
export function safetyProblems(first: PourRow, run: ScentRun, scents: Scents, settings: Settings): Problem[] {
  const found: Omit<Problem, "row">[] = [
    ...overLimits(run, settings),
    ...highLoad(run.loads["of wax"], run.limits),
    ...uncounted(run.ingredients, scents),
    ...run.remarks.map((one) => ({ ...one, severity: "warning" as const })),
  ];
  return found.map((one) => ({ row: first.row, ...one, text: `${nameOf(first)}: ${one.text}`, safety: true }));
}
