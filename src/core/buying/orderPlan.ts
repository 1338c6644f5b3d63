import { atLeastZero } from "../check/atLeastZero";
import { wrong } from "../check/wrong";
import { sum } from "../statistics/sum";
import { tidy } from "../tidy";
import { costOfPacks } from "./costOfPacks";
import { type Pack, packPlan } from "./packPlan";

/** A pack with where it is sold. */
export interface Offer extends Pack {
  readonly supplier: string;
}

/** Something that is needed, and the packs that cover it. */
export interface Need {
  readonly need: number;
  readonly offers: readonly Offer[];
}

/** All ways to choose from so many suppliers are compared. */
const MOST_SUPPLIERS = 12;

/**
 * How many of each pack to buy to cover several needs, where an order costs something on top whatever is in it: least
 * cost in all, then fewest orders, and for each need as packPlan says.
 *
 * For each choice of suppliers every need takes its own best packs of theirs; the choice that costs least with its
 * deliveries is taken. Suppliers that deliver for nothing are in every choice.
 * @param needs each needs at least one offer
 * @param delivery money for an order, by supplier; 0 for those that are not in it
 * @returns for each need a count for each of its offers, in their order
 */
export function orderPlan(needs: readonly Need[], delivery: ReadonlyMap<string, number>): number[][] {
  const charge = (supplier: string) => atLeastZero("delivery", delivery.get(supplier) ?? 0);
  const all = [...new Set(needs.flatMap(({ offers }) => offers.map(({ supplier }) => supplier)))];
  const charged = all.filter((supplier) => charge(supplier) > 0);
  if (charged.length > MOST_SUPPLIERS) {
    throw wrong("delivery", `${charged.length} suppliers are too many to compare; give fewer of them a delivery`);
  }
  const plans = needs.map((need) => plansOf(need, charged));
  let best: { readonly cost: number; readonly counts: number[][] } | undefined;
  for (const chosen of choicesOf(charged)) {
    const found = plans.flatMap((plan) => plan(chosen) ?? []);
    if (found.length < needs.length) continue;
    const total = sum([...found.map(({ cost }) => cost), ...[...chosen].map(charge)]);
    const cost = tidy(total);
    if (!best || cost < best.cost) best = { cost, counts: found.map(({ counts }) => counts) };
  }
  if (!best) throw wrong("sizes", "nothing to buy from; write a pack with its size and price");
  return best.counts;
}

/** All sets of suppliers, the small ones first. */
function choicesOf(suppliers: readonly string[]): ReadonlySet<string>[] {
  let sets: string[][] = [[]];
  for (const one of suppliers) sets = sets.flatMap((set) => [set, [...set, one]]);
  return sets.sort((a, b) => a.length - b.length).map((set) => new Set(set));
}

/** The best packs for a need from some of the charged suppliers and all others, each worked out once. */
function plansOf({ need, offers }: Need, charged: readonly string[]) {
  const known = new Map<string, { cost: number; counts: number[] } | undefined>();
  const own = charged.filter((supplier) => offers.some((offer) => offer.supplier === supplier));
  return (chosen: ReadonlySet<string>) => {
    const key = own.map((supplier) => (chosen.has(supplier) ? "1" : "0")).join("");
    if (!known.has(key)) {
      const open = offers.filter(({ supplier }) => chosen.has(supplier) || !charged.includes(supplier));
      if (open.length === 0) known.set(key, undefined);
      else {
        const counts = packPlan(need, open);
        const inPlace = offers.map((offer) => (open.includes(offer) ? (counts[open.indexOf(offer)] as number) : 0));
        known.set(key, { cost: costOfPacks(counts, open), counts: inPlace });
      }
    }
    return known.get(key);
  };
}
