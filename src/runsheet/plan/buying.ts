import { costOfPacks } from "../../core/buying/costOfPacks";
import { orderPlan } from "../../core/buying/orderPlan";
import { packPlan } from "../../core/buying/packPlan";
import { Fault } from "../../core/fault";
import type { Problem } from "../problem";
import { sameName } from "../sameName";
import type { Offer } from "../tables/items";

/** What is to be bought, and the packs it is sold in. */
export interface Wanted {
  readonly item: string;
  readonly missing: number;
  readonly offers: readonly Offer[];
}

/** The packs to buy, none where no pack is known; what they cost without delivery. */
export interface Bought {
  readonly buy: readonly { readonly count: number; readonly size: number; readonly supplier: string }[];
  readonly cost: number | undefined;
}

/** An order that costs something on top. */
export interface Delivery {
  /** Empty where no supplier is named: then it is an order for this item alone. */
  readonly supplier: string;
  readonly items: readonly string[];
  readonly cost: number;
}

/** The cheapest packs that cover what is wanted, the deliveries of all orders counted in. */
export function buying(wanted: readonly Wanted[]): {
  bought: Bought[];
  deliveries: Delivery[];
  problems: Problem[];
} {
  const problems: Problem[] = [];
  const sold = wanted.filter((one) => {
    const fault = faultOf(one);
    if (fault) problems.push({ text: `${one.item}: ${fault}`, severity: "warning" });
    return one.offers.length > 0 && !fault;
  });
  const delivery = deliveryOf(sold, problems);
  const counts = countsOf(sold, delivery, problems);
  const bought = wanted.map((one): Bought => {
    const own = counts?.[sold.indexOf(one)];
    if (!own) return { buy: [], cost: undefined };
    const buy = one.offers.map(({ size, supplier }, i) => ({ count: own[i] as number, size, supplier }));
    return { buy: buy.filter(({ count }) => count > 0), cost: costOfPacks(own, one.offers) };
  });
  const deliveries = [...delivery].flatMap(([order, cost]): Delivery[] => {
    const items = wanted.filter((one, w) =>
      bought[w]?.buy.some(({ supplier }) => orderOf(supplier, one.item) === order),
    );
    const [first] = items;
    if (!first || cost === 0) return [];
    const supplier = first.offers.find((offer) => orderOf(offer.supplier, first.item) === order)?.supplier ?? "";
    return [{ supplier, items: items.map(({ item }) => item), cost }];
  });
  return { bought, deliveries, problems };
}

/** Why the packs of one item cannot be chosen; undefined where they can. */
function faultOf({ missing, offers }: Wanted): string | undefined {
  if (offers.length === 0) return undefined;
  try {
    packPlan(missing, offers);
    return undefined;
  } catch (fault) {
    if (!(fault instanceof Fault)) throw fault;
    return fault.message;
  }
}

/** What belongs to one order: all from one supplier; where none is named, each item by itself. */
const orderOf = (supplier: string, item: string): string =>
  supplier === "" ? `item ${sameName(item)}` : `supplier ${sameName(supplier)}`;

/** What each order costs on top: the most that any row says. */
function deliveryOf(sold: readonly Wanted[], problems: Problem[]): Map<string, number> {
  const found = new Map<string, number>();
  for (const { item, offers } of sold) {
    for (const { supplier, delivery } of offers) {
      const order = orderOf(supplier, item);
      const before = found.get(order);
      if (before !== undefined && before !== delivery && before > 0 && delivery > 0) {
        const text = `${supplier || item}: its rows say different deliveries; the highest is taken`;
        problems.push({ table: "items", field: "delivery", severity: "warning", text });
      }
      found.set(order, Math.max(before ?? 0, delivery));
    }
  }
  return found;
}

function countsOf(
  sold: readonly Wanted[],
  delivery: ReadonlyMap<string, number>,
  problems: Problem[],
): number[][] | undefined {
  const needs = sold.map(({ item, missing, offers }) => ({
    need: missing,
    offers: offers.map(({ size, price, supplier }) => ({ size, price, supplier: orderOf(supplier, item) })),
  }));
  try {
    return orderPlan(needs, delivery);
  } catch (fault) {
    if (!(fault instanceof Fault)) throw fault;
    problems.push({ text: `Delivery: ${fault.sentence}`, severity: "warning" });
    return undefined;
  }
}
