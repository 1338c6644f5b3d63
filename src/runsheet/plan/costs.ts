import { candleCost } from "../../core/cost/candleCost";
import { addAll } from "../../core/longLists";
import { recipeSplit } from "../../core/scent/recipeSplit";
import { sum } from "../../core/statistics/sum";
import { asWarning, type Problem } from "../problem";
import { sameName } from "../sameName";
import type { Settings } from "../settings";
import type { Supplies } from "../stock/supplies";
import type { Use } from "../tables/byUse";
import { type FittingTables, fittingsOf } from "../tables/fittings";
import type { Use as AmountUsed, Beside } from "./beside";
import { isItItem } from "./nearItem";
import { nameOf, type RunPlan, type ScentRun } from "./runPlan";
import { keyOf, usesOf } from "./uses";

/** What candles of one kind and scent cost, the loss included. */
export interface KindCost {
  readonly scent: string;
  readonly vessel: string;
  readonly count: number;
  readonly each: number;
  /** What `each` is made of. Rejects are what the good candles pay for the others. */
  readonly parts: {
    readonly ingredients: number;
    readonly vessel: number;
    readonly components: number;
    readonly labour: number;
    readonly rejects: number;
  };
}

export interface Costs {
  /** What it is the cost of: `Cost of materials`, `Cost with labour and rejects`. */
  readonly title: string;
  readonly kinds: readonly KindCost[];
  readonly run: number;
}

/** The cost of a run; undefined where a price is missing, which is named: a part of a cost is a wrong cost. */
export function costs(
  plan: RunPlan,
  supplies: Supplies,
  tables: FittingTables,
  settings: Settings,
  { rejects = 0 }: Beside = {},
): { costs: Costs | undefined; problems: Problem[] } {
  const prices = new PricesOf(plan, supplies, tables);
  // Where nothing came out good no candle pays for the others.
  const isLost = rejects >= 1;
  const labour = (settings.labourMinutes / 60) * settings.labourRate;
  const kinds = plan.scents.flatMap((run) =>
    kindsOf(run).map(({ vessel, fill, count }): KindCost => {
      const weights = recipeSplit(fill * (1 + settings.loss), run.ingredients);
      const used = run.ingredients.map(({ name }, i) => ({
        weight: weights[i] as number,
        unitPrice: prices.of(name, "weight"),
      }));
      const [itself, counted] = [prices.of(vessel, "count"), prices.ofFittings(vessel)];
      const each = candleCost(used, [itself, ...counted], labour, isLost ? 0 : rejects);
      const ingredients = candleCost(used, [0]);
      const parts = { ingredients, vessel: itself, components: sum(counted), labour };
      return {
        scent: nameOf(run),
        vessel,
        count,
        each,
        parts: { ...parts, rejects: each - sum(Object.values(parts)) },
      };
    }),
  );
  const problems: Problem[] = [...prices.problems];
  if (isLost) {
    const text = "No candle of the log came out good: the cost is what one costs to make, rejects not counted";
    problems.push({ text, severity: "warning" });
  }
  if (prices.isShort) return { costs: undefined, problems };
  const more = [...(labour > 0 ? ["labour"] : []), ...(rejects > 0 && !isLost ? ["rejects"] : [])];
  const title = more.length === 0 ? "Cost of materials" : `Cost with ${more.join(" and ")}`;
  return { costs: { title, kinds, run: sum(kinds.map(({ each, count }) => each * count)) }, problems };
}

/** The candles of a scent by vessel and fill. */
function kindsOf({ pots }: ScentRun): { vessel: string; fill: number; count: number }[] {
  const counted = new Map<string, { vessel: string; fill: number; count: number }>();
  for (const { vessel, fill, count } of pots.flatMap(({ lines }) => lines)) {
    const key = JSON.stringify([sameName(vessel), fill]);
    counted.set(key, { vessel, fill, count: (counted.get(key)?.count ?? 0) + count });
  }
  return [...counted.values()];
}

/** The price of one unit of whatever a run uses, each asked for once; those that are not known are gathered. */
class PricesOf {
  readonly problems: Problem[] = [];
  isShort = false;
  private readonly known = new Map<string, number>();
  private readonly amounts: ReadonlyMap<string, number>;
  private readonly used: readonly Pick<AmountUsed, "item">[];

  constructor(
    plan: RunPlan,
    private readonly supplies: Supplies,
    private readonly tables: FittingTables,
  ) {
    const { uses } = usesOf(plan, tables);
    this.used = uses;
    this.amounts = new Map(uses.map((use) => [keyOf(use), use.amount]));
  }

  of(item: string, use: Use): number {
    const key = keyOf({ item, isCounted: use === "count" });
    const before = this.known.get(key);
    if (before !== undefined) return before;
    const { price, wrong, looks } = this.supplies.price(item, use, this.amounts.get(key) ?? 0);
    addAll(this.problems, wrong.map(asWarning), looks);
    const isKnown = price !== undefined && wrong.length === 0;
    if (!isKnown) this.isShort = true;
    if (price === undefined && wrong.length === 0) {
      const ask = isItItem({ item, isCounted: use === "count" }, this.used, this.supplies);
      this.problems.push({ text: `${item} has no price; the cost is left out${ask}`, severity: "warning" });
    }
    this.known.set(key, isKnown ? price : 0);
    return isKnown ? price : 0;
  }

  /** What goes with a candle and is counted. A number that is not known is spoken of where it stands. */
  ofFittings(vessel: string): number[] {
    return fittingsOf(vessel, this.tables).map(({ item, each }) => {
      if (each === undefined) this.isShort = true;
      return each === undefined ? 0 : each * this.of(item, "count");
    });
  }
}
