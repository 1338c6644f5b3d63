import { useMemo } from "react";
import { tidy } from "../../core/tidy";
import { type StockPrice, stockValue } from "../../runsheet/stock/lotPrice";
import { leftOf, lotsOf, overdrawn } from "../../runsheet/stock/lots";
import type { Book } from "../actions/book";
import { amountsOf } from "../receiving/amountsOf";
import type { StockBeside } from "../receiving/planReceipt";

/** What the moves leave of each item, lot by lot, and what that is worth. */
function shelfOf({ known, moves, ledger }: StockBeside, stockPrice: StockPrice) {
  if (!moves || !ledger) return undefined;
  const { items, total, unpriced } = stockValue(ledger, stockPrice);
  const amountOf = amountsOf(known, moves.read.unit);
  return {
    items: items.map(({ item, value }) => {
      // As the table counts: a weight or pieces.
      const lots = lotsOf(ledger, item, "count");
      const left = lots.reduce((all, { quantity }) => all + quantity, 0);
      return { item, value, lots, left: amountOf(item, tidy(left)) };
    }),
    total,
    unpriced,
    method: stockPrice,
    overdrawn: [...ledger.items.values()].flatMap(({ item }) => {
      const lots = overdrawn(ledger, item).map(({ lot }) => ({ item, lot, amount: "" }));
      const left = leftOf(ledger, item, "count") ?? 0;
      return lots.length > 0 || left >= 0 ? lots : [{ item, lot: "", amount: amountOf(item, tidy(-left)) }];
    }),
  };
}

/** The shelf, added up where the stock is looked at. */
export function useShelf(
  { kept }: Book,
  beside: StockBeside | undefined,
): { readonly shelf?: ReturnType<typeof shelfOf>; readonly refused?: string } {
  const stockPrice = kept?.choices.stockPrice;
  return useMemo(() => {
    if (!beside || !stockPrice) return {};
    return beside.refused === undefined ? { shelf: shelfOf(beside, stockPrice) } : { refused: beside.refused };
  }, [beside, stockPrice]);
}

export type ShelfState = ReturnType<typeof useShelf>;
