import { gramsIn } from "../../core/units/weight";
import type { OpenRun } from "../plan/beside";
import type { WeightUnit } from "../settings";
import type { Log } from "../tables/runsLog";
import { loggedPots } from "./loggedPots";
import type { PouredRun } from "./poured";

/** A written run as far as it is not in the log; undefined where all of it is. Weights in this unit. */
export function openRun(run: PouredRun, log: Log, unit: WeightUnit): OpenRun | undefined {
  const logged = loggedPots(log, run.lot);
  const known = new Set(logged);
  const open = logged === undefined ? [] : run.pots.filter(({ id }) => !known.has(id));
  if (open.length === 0) return undefined;
  const ratio = run.unit === unit ? 1 : gramsIn("unit", run.unit) / gramsIn("unit", unit);
  return {
    lot: run.lot,
    date: run.date,
    candles: run.pots.flatMap(({ scent, lines }) => lines.map(({ vessel, count }) => ({ scent, vessel, count }))),
    ingredients: run.pots.flatMap(({ parts }) => parts.flatMap(({ item, planned }) => (planned > 0 ? item : []))),
    // What was weighed is gone from the shelf as it was weighed.
    weighed: open.flatMap(({ parts }) =>
      parts.map(({ item, planned, actual }) => ({ item, amount: (actual ?? planned) * ratio })),
    ),
    vessels: open.flatMap(({ lines }) => lines.map(({ vessel, count }) => ({ vessel, count }))),
  };
}
