import { candleCost } from "../../core/cost/candleCost";
import { recipeSplit } from "../../core/scent/recipeSplit";
import { sum } from "../../core/statistics/sum";
import { asWarning, type Problem } from "../problem";
import { sameName } from "../sameName";
import type { Settings } from "../settings";
import type { Components } from "../tables/components";
import type { Prices } from "../tables/prices";
import { nameOf, type RunPlan } from "./runPlan";

/** What candles of one kind and scent cost: materials, vessel and components, the loss included, no labour. */
export interface KindCost {
  readonly scent: string;
  readonly vessel: string;
  readonly count: number;
  readonly each: number;
}

export interface Costs {
  readonly kinds: readonly KindCost[];
  readonly run: number;
}

/** The cost of a run from a table of prices; undefined where a price is missing: a part of a cost is a wrong cost. */
export function costs(
  plan: RunPlan,
  prices: Prices,
  components: Components,
  settings: Settings,
): { costs: Costs | undefined; problems: Problem[] } {
  const problems: Problem[] = [];
  const missing = new Set<string>();
  const priceOf = (item: string, by: "count" | "weight"): number => {
    const known = prices.get(sameName(item))?.[by];
    if (known?.price === undefined && !missing.has(item)) {
      missing.add(item);
      problems.push(
        ...(known?.wrong.map(asWarning) ?? [
          { text: `${item} has no price; the cost is left out`, severity: "warning" },
        ]),
      );
    }
    return known?.price ?? 0;
  };
  /** What goes with a candle and is counted. A number that is not known is spoken of where it stands. */
  const partsOf = (vessel: string): number[] =>
    (components.get(sameName(vessel)) ?? []).map(({ item, each }) => {
      if (each === undefined) missing.add(item);
      return each === undefined ? 0 : each * priceOf(item, "count");
    });
  const kinds = plan.scents.flatMap((run) => {
    const counted = new Map<string, { vessel: string; fill: number; count: number }>();
    for (const { vessel, fill, count } of run.pots.flatMap(({ lines }) => lines)) {
      const key = JSON.stringify([sameName(vessel), fill]);
      counted.set(key, { vessel, fill, count: (counted.get(key)?.count ?? 0) + count });
    }
    return [...counted.values()].map(({ vessel, fill, count }): KindCost => {
      const weights = recipeSplit(fill * (1 + settings.loss), run.ingredients);
      const used = run.ingredients.map(({ name }, i) => ({
        weight: weights[i] as number,
        unitPrice: priceOf(name, "weight"),
      }));
      return {
        scent: nameOf(run),
        vessel,
        count,
        each: candleCost(used, [priceOf(vessel, "count"), ...partsOf(vessel)]),
      };
    });
  });
  if (missing.size > 0) return { costs: undefined, problems };
  return { costs: { kinds, run: sum(kinds.map(({ each, count }) => each * count)) }, problems };
}
