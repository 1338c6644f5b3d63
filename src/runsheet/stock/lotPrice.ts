import { stockCost } from "../../core/cost/stockCost";
import { addAll } from "../../core/longLists";
import { sum } from "../../core/statistics/sum";
import { sameName } from "../sameName";
import type { Settings } from "../settings";
import type { Use } from "../tables/byUse";
import type { Ledger } from "./ledger";
import { lotsOf, type StockLot } from "./lots";

/** How lots make one price: the oldest go first, all at their mean, or what was paid last for any. */
export type StockPrice = Settings["stockPrice"];

/** What one unit of an item costs by its lots. */
export interface LotPrice {
  readonly price: number;
  /** Lots in stock that nothing was written for: they are taken at the price of the others. */
  readonly unpriced: readonly string[];
}

/**
 * What one unit of an item costs by the lots in stock; undefined where nothing was ever paid.
 * @param amount how much of it is taken: with `first in` that is what the oldest lots cost on average, and beyond the
 * stock what was paid last
 */
export function lotPrice(
  ledger: Ledger,
  item: string,
  use: Use,
  method: StockPrice,
  amount: number,
): LotPrice | undefined {
  const last = lastPaid(ledger, item, use);
  if (last === undefined) return undefined;
  const lots = lotsOf(ledger, item, use);
  const unpriced = lots.flatMap(({ lot, unitPrice }) => (unitPrice === undefined ? [lot] : []));
  if (method === "last paid") return { price: last, unpriced: [] };
  return { price: meanOf(lots, method, amount, last), unpriced };
}

function meanOf(lots: readonly StockLot[], method: "first in" | "average", amount: number, last: number): number {
  const priced = lots.map(({ quantity, unitPrice = last }) => ({ quantity, unitPrice }));
  const stock = sum(priced.map(({ quantity }) => quantity));
  if (stock === 0) return last;
  if (method === "average") return stockCost(priced, stock, "average") / stock;
  if (amount <= 0) return priced[0]?.unitPrice ?? last;
  const there = Math.min(amount, stock);
  return (stockCost(priced, there, "first in") + (amount - there) * last) / amount;
}

/** What was paid last for one unit of an item, whether or not any of it is left. */
export function lastPaid(ledger: Ledger, item: string, use: Use): number | undefined {
  const paid = (ledger.items.get(sameName(item))?.lots ?? []).flatMap(({ lastPaid }) => lastPaid ?? []);
  const [last] = paid.sort((a, b) => (a.date === b.date ? b.row - a.row : b.date > a.date ? 1 : -1));
  return last && last.unitPrice / (use === "weight" ? ledger.moves.ratio : 1);
}

/** What an item in stock is worth. */
export interface ItemValue {
  readonly item: string;
  readonly value: number;
}

/** The value of the stock: what is left of each lot at what it cost. Lots that nothing was written for are named. */
export function stockValue(
  ledger: Ledger,
  method: StockPrice,
): { readonly items: readonly ItemValue[]; readonly total: number; readonly unpriced: readonly string[] } {
  const unpriced: string[] = [];
  const items = [...ledger.items.values()].flatMap(({ item }): ItemValue[] => {
    // Worth is the same by number and by weight.
    const lots = lotsOf(ledger, item, "count");
    if (lots.length === 0) return [];
    const last = lastPaid(ledger, item, "count");
    const bare = lots.filter(({ unitPrice }) => unitPrice === undefined);
    addAll(
      unpriced,
      bare.map(({ lot }) => (lot === "" ? item : `${item}, lot ${lot}`)),
    );
    const each = (lot: StockLot) => (method === "last paid" ? last : lot.unitPrice) ?? 0;
    return [{ item, value: sum(lots.map((lot) => lot.quantity * each(lot))) }];
  });
  return { items, total: sum(items.map(({ value }) => value)), unpriced };
}
