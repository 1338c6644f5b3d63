import { sum } from "../../core/statistics/sum";
import { tidy } from "../../core/tidy";
import { sameName } from "../sameName";
import type { Components } from "../tables/components";
import type { Use } from "./beside";
import type { RunPlan } from "./runPlan";

/** Everything a run uses, ingredients before vessels before components, each item once; and of what it is not known. */
export function usesOf(plan: RunPlan, components: Components): { uses: Use[]; unknown: string[] } {
  const found = new Map<string, Use>();
  const use = (item: string, amount: number, isCounted: boolean) => {
    const key = keyOf({ item, isCounted });
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
  const uses = [...found.values()].filter((one) => one.amount > 0 && isKnown(one));
  return {
    uses: uses.map((one) => (one.isCounted ? { ...one, amount: wholePieces(one.amount) } : one)),
    unknown: [...unknown.values()],
  };
}

/** Half a box is a box. */
export const wholePieces = (amount: number): number => Math.ceil(tidy(amount));

/** What is used by number is another thing than what is weighed under the same name. */
export const keyOf = ({ item, isCounted }: Omit<Use, "amount">): string => `${isCounted} ${sameName(item)}`;
