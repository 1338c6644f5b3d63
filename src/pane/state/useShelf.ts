import { useMemo } from "react";
import { ledgerOf } from "../../runsheet/stock/ledger";
import { stockValue } from "../../runsheet/stock/lotPrice";
import { lotsOf, overdrawn } from "../../runsheet/stock/lots";
import type { Book } from "../actions/book";
import { movesOn } from "../actions/onRecord";
import { amountsOf } from "../receiving/amountsOf";
import type { Kept } from "./kept";
import type { ReadTables } from "./useTables";

/** What the moves leave of each item, lot by lot, and what that is worth. */
function shelfOf(read: ReadTables, kept: Kept) {
  const { unit, stockPrice } = kept.choices;
  const moves = movesOn(read, kept, unit);
  if (!moves) return undefined;
  const ledger = ledgerOf(moves.read);
  const { items, total, unpriced } = stockValue(ledger, stockPrice);
  const amountOf = amountsOf(read, kept, unit, moves.read.unit);
  return {
    items: items.map(({ item, value }) => {
      // As the table counts: a weight or pieces.
      const lots = lotsOf(ledger, item, "count");
      const left = lots.reduce((all, { quantity }) => all + quantity, 0);
      return { item, value, lots, left: amountOf(item, Number(left.toPrecision(12))) };
    }),
    total,
    unpriced,
    method: stockPrice,
    overdrawn: [...ledger.items.values()].flatMap(({ item }) =>
      overdrawn(ledger, item).map(({ lot }) => ({ item, lot })),
    ),
  };
}

/** The shelf is added up only while somebody looks. */
export function useShelf(
  { kept }: Book,
  read: ReadTables,
  isShown: boolean,
): { readonly shelf?: ReturnType<typeof shelfOf>; readonly refused?: string } {
  return useMemo(() => {
    if (!isShown || !kept) return {};
    try {
      return { shelf: shelfOf(read, kept) };
    } catch (error) {
      return { refused: (error as Error).message };
    }
  }, [isShown, read, kept]);
}

export type ShelfState = ReturnType<typeof useShelf>;
