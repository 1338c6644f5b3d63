import { sum } from "../../core/statistics/sum";
import { tidy } from "../../core/tidy";
import { sameName } from "../sameName";
import { type FittingTables, fittingsOf } from "../tables/fittings";
import type { OpenRun, Use } from "./beside";
import type { RunPlan } from "./runPlan";

/** What is used, each item once. */
export interface Uses {
  readonly uses: readonly Use[];
  /** Items of which it is not known how many some of the candles take: of these `uses` holds too few, or none. */
  readonly unknown: readonly string[];
}

/** Everything a run uses, ingredients before vessels before what goes with them. */
export function usesOf({ scents }: RunPlan, tables: FittingTables): Uses {
  const weighed = scents.flatMap(({ ingredients, pots }) =>
    ingredients.map(({ name }, i) => ({ item: name, amount: sum(pots.map(({ weights }) => weights[i] as number)) })),
  );
  return usesWith({ weighed, vessels: scents.flatMap(({ pots }) => pots.flatMap(({ lines }) => lines)) }, tables);
}

/** The same of what is weighed and of the vessels that are poured. */
export function usesWith({ weighed, vessels }: Pick<OpenRun, "weighed" | "vessels">, tables: FittingTables): Uses {
  const found = new Map<string, Use>();
  const unknown = new Map<string, string>();
  const use = (one: Use) => {
    const before = found.get(keyOf(one));
    found.set(keyOf(one), before ? { ...before, amount: before.amount + one.amount } : one);
  };
  for (const one of weighed) use({ ...one, isCounted: false });
  for (const { vessel, count } of vessels) use({ item: vessel, amount: count, isCounted: true });
  for (const { vessel, count } of vessels) {
    for (const { item, each } of fittingsOf(vessel, tables)) {
      if (each === undefined) unknown.set(sameName(item), item);
      else use({ item, amount: count * each, isCounted: true });
    }
  }
  const uses = [...found.values()].filter(({ amount }) => amount > 0);
  return {
    uses: uses.map((one) => ({ ...one, amount: one.isCounted ? wholePieces(one.amount) : tidy(one.amount) })),
    unknown: [...unknown.values()],
  };
}

/** What is used of which all is known. */
export const knownUses = ({ uses, unknown }: Uses): Use[] =>
  uses.filter(({ item, isCounted }) => !(isCounted && unknown.some((one) => sameName(one) === sameName(item))));

/** Half a box is a box. */
export const wholePieces = (amount: number): number => Math.ceil(tidy(amount));

/** What is used by number is another thing than what is weighed under the same name. */
export const keyOf = ({ item, isCounted }: Omit<Use, "amount">): string => `${isCounted} ${sameName(item)}`;
