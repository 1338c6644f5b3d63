import { sum } from "../../core/statistics/sum";
import { sameName } from "../sameName";
import { type Fitting, type FittingTables, fittingsOf } from "../tables/fittings";
import type { Ingredient } from "../tables/recipes";
import type { RunPlan } from "./runPlan";
import { wholePieces } from "./uses";

export type ThingKind = "wax" | "dye" | "scent" | "other" | "vessel" | "wick" | "component";

/** Something to fetch for a run: weighed out of the pots' ingredients, or counted by the vessels. */
export interface Thing {
  /** By which rows of the sheet are known to hold it. */
  readonly id: string;
  readonly kind: ThingKind;
  readonly name: string;
  /** Undefined where it is not known how many a candle takes. */
  readonly amount: number | undefined;
  /** Vessels that take it, and how many each; none for what is weighed. */
  readonly of: readonly { readonly vessel: string; readonly each: number | undefined }[];
}

/** All that a run takes, each thing once, in the order in which it is needed. */
export function fetchList({ scents }: RunPlan, tables: FittingTables): Thing[] {
  const weighed = new Map<string, Thing & { amount: number }>();
  for (const { ingredients, pots } of scents) {
    for (const [i, one] of ingredients.entries()) {
      const id = ingredientId(one);
      const before = weighed.get(id) ?? { id, kind: kindOf(one), name: one.name, amount: 0, of: [] };
      const amount = before.amount + sum(pots.map(({ weights }) => weights[i] as number));
      weighed.set(id, { ...before, amount });
    }
  }
  const lines = scents.flatMap(({ pots }) => pots.flatMap((pot) => pot.lines));
  const poured = new Map<string, Thing & { amount: number }>();
  for (const { vessel, count } of lines) {
    const id = vesselId(vessel);
    const before = poured.get(id) ?? { id, kind: "vessel", name: vessel, amount: 0, of: [{ vessel: id, each: 1 }] };
    poured.set(id, { ...before, amount: before.amount + count });
  }
  return [...inOrder([...weighed.values()]), ...poured.values(), ...withVessels([...poured.values()], tables)];
}

export const ingredientId = (one: Pick<Ingredient, "name" | "basis" | "isScent" | "isDye">): string =>
  `${kindOf(one)} ${sameName(one.name)}`;
export const vesselId = (vessel: string): string => countedId("vessel", vessel);
export type Counted = "vessel" | "wick" | "component";
export const countedId = (kind: Counted, name: string): string => `${kind} ${sameName(name)}`;

function kindOf({ basis, isScent, isDye }: Pick<Ingredient, "basis" | "isScent" | "isDye">): ThingKind {
  if (basis === "part") return "wax";
  return isScent ? "scent" : isDye ? "dye" : "other";
}

const ORDER: readonly ThingKind[] = ["wax", "dye", "scent", "other"];
const inOrder = <T extends Thing>(things: T[]): T[] =>
  things.filter(({ amount }) => amount !== 0).sort((a, b) => ORDER.indexOf(a.kind) - ORDER.indexOf(b.kind));

/** The wicks of all vessels, then their components. What is the wick of one and a component of another is a wick. */
function withVessels(poured: readonly (Thing & { amount: number })[], tables: FittingTables): Thing[] {
  const found = new Map<string, Thing>();
  const add = ({ kind, item, each }: Fitting, vessel: Thing & { amount: number }) => {
    const key = sameName(item);
    const before = found.get(key) ?? { id: countedId(kind, item), kind, name: item, amount: 0, of: [] };
    const more = each === undefined ? undefined : each * vessel.amount;
    const amount = before.amount === undefined || more === undefined ? undefined : before.amount + more;
    found.set(key, { ...before, amount, of: [...before.of, { vessel: vessel.id, each }] });
  };
  const all = poured.flatMap((vessel) => fittingsOf(vessel.name, tables).map((fitting) => ({ fitting, vessel })));
  for (const kind of ["wick", "component"] as const) {
    for (const { fitting, vessel } of all) if (fitting.kind === kind) add(fitting, vessel);
  }
  return [...found.values()].map((one) => ({
    ...one,
    amount: one.amount === undefined ? undefined : wholePieces(one.amount),
  }));
}
