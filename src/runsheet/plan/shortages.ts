import { costOfPacks } from "../../core/buying/costOfPacks";
import { packPlan } from "../../core/buying/packPlan";
import { Fault } from "../../core/fault";
import { sum } from "../../core/statistics/sum";
import { asWarning, type Problem } from "../problem";
import { sameName } from "../sameName";
import type { Components } from "../tables/components";
import type { Stock, StockItem } from "../tables/stock";
import type { RunPlan } from "./runPlan";

/** Something the run uses: an ingredient by weight, or vessels and what goes with them by number. */
export interface Use {
  readonly item: string;
  readonly amount: number;
  /** Counted, not weighed. */
  readonly isCounted: boolean;
}

/** What the shelf lacks of an item, and the packs that cover it at the least cost (none where no pack is known). */
export interface Lack extends Use {
  readonly onHand: number;
  readonly missing: number;
  readonly buy: readonly { readonly count: number; readonly size: number }[];
  readonly cost: number | undefined;
}

/** Everything a run uses, ingredients before vessels before components, each item once; and of what it is not known. */
function usesOf(plan: RunPlan, components: Components): { uses: Use[]; unknown: string[] } {
  const found = new Map<string, Use>();
  const use = (item: string, amount: number, isCounted: boolean) => {
    const key = `${isCounted} ${sameName(item)}`;
    found.set(key, { item: found.get(key)?.item ?? item, amount: (found.get(key)?.amount ?? 0) + amount, isCounted });
  };
  for (const { ingredients, pots } of plan.scents) {
    for (const [i, { name }] of ingredients.entries()) {
      use(name, sum(pots.map(({ weights }) => weights[i] as number)), false);
    }
  }
  const lines = plan.scents.flatMap(({ pots }) => pots.flatMap((pot) => pot.lines));
  for (const { vessel, count } of lines) use(vessel, count, true);
  const unknown = new Map<string, string>();
  for (const { vessel, count } of lines) {
    for (const { item, each } of components.get(sameName(vessel)) ?? []) {
      if (each === undefined) unknown.set(sameName(item), item);
      else use(item, count * each, true);
    }
  }
  const isKnown = ({ item, isCounted }: Use) => !(isCounted && unknown.has(sameName(item)));
  // Half a box is a box.
  const whole = (amount: number) => Math.ceil(Number(amount.toPrecision(12)));
  const uses = [...found.values()].filter((one) => one.amount > 0 && isKnown(one));
  return {
    uses: uses.map((one) => (one.isCounted ? { ...one, amount: whole(one.amount) } : one)),
    unknown: [...unknown.values()],
  };
}

/** What the shelf lacks for a run, and the items that were not checked: the stock table lacks them or is wrong there. */
export interface Shelf {
  readonly lacks: readonly Lack[];
  readonly unchecked: readonly string[];
}

/** What the shelf lacks for a run. Items that could not be checked are named to look at. */
export function shortages(plan: RunPlan, stock: Stock, components: Components): { shelf: Shelf; problems: Problem[] } {
  const lacks: Lack[] = [];
  const { uses, unknown } = usesOf(plan, components);
  const unchecked: string[] = [...unknown];
  const absent: string[] = [];
  const problems: Problem[] = [];
  for (const use of uses) {
    const known = stock.get(sameName(use.item))?.[use.isCounted ? "count" : "weight"];
    if (!known) absent.push(use.item);
    else problems.push(...known.wrong.map(asWarning), ...known.looks);
    if (!known || known.wrong.length > 0) {
      unchecked.push(use.item);
      continue;
    }
    const missing = Number((use.amount - known.onHand).toPrecision(12));
    if (missing <= 0) continue;
    lacks.push({ ...use, onHand: known.onHand, missing, ...buying(use.item, missing, known, problems) });
  }
  if (absent.length > 0) {
    const whose = absent.length === 1 ? "its" : "their";
    problems.push({
      text: `${absent.join(", ")}: not in the stock table, so ${whose} stock is not checked`,
      severity: "warning",
    });
  }
  return { shelf: { lacks, unchecked }, problems };
}

function buying(item: string, missing: number, { packs }: StockItem, problems: Problem[]): Pick<Lack, "buy" | "cost"> {
  if (packs.length === 0) return { buy: [], cost: undefined };
  try {
    const counts = packPlan(missing, packs);
    const buy = packs.map(({ size }, i) => ({ count: counts[i] as number, size })).filter(({ count }) => count > 0);
    return { buy, cost: costOfPacks(counts, packs) };
  } catch (fault) {
    if (!(fault instanceof Fault)) throw fault;
    problems.push({ text: `${item}: ${fault.message}`, severity: "warning" });
    return { buy: [], cost: undefined };
  }
}
