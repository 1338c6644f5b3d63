import { gramsIn } from "../../core/units/weight";
import type { Use } from "../plan/beside";
import { sameName } from "../sameName";
import type { WeightUnit } from "../settings";
import type { Components } from "../tables/components";
import type { PouredRun } from "./poured";
import { type Log, loggedPots } from "./readLog";

/** What the pots of a written run that are not in the log will take, as planned; weights in this unit. */
export function reservedBy(run: PouredRun, log: Log, components: Components, unit: WeightUnit): Use[] {
  const logged = loggedPots(log, run.lot);
  const left = logged === undefined ? [] : run.pots.filter(({ id }) => !logged.includes(id));
  const ratio = run.unit === unit ? 1 : gramsIn("unit", run.unit) / gramsIn("unit", unit);
  return left.flatMap(({ parts, lines }) => [
    ...parts.map(({ item, planned }): Use => ({ item, amount: planned * ratio, isCounted: false })),
    ...lines.flatMap(({ vessel, count }): Use[] => [
      { item: vessel, amount: count, isCounted: true },
      ...(components.get(sameName(vessel)) ?? []).flatMap(({ item, each = 0 }) =>
        each > 0 ? { item, amount: each * count, isCounted: true } : [],
      ),
    ]),
  ]);
}
