/** The words of what is on the shelf and what it is worth. */

import { plain } from "../../core/check/plain";
import type { StockPrice } from "../../runsheet/stock/lotPrice";

const BY: Readonly<Record<StockPrice, string>> = {
  "first in": "each lot at what it cost",
  average: "each lot at what it cost",
  "last paid": "all at what was paid last",
};

const money = (value: number): string => value.toFixed(2);

export const SHELF = {
  heading: "On the shelf",
  item: "Item",
  left: "Left",
  worth: "Worth",
  total: (value: number, method: StockPrice) => `Worth ${money(value)} in all, ${BY[method]}.`,
  money,
  noPrice: "no price",
  lots: (lots: readonly { readonly lot: string; readonly quantity: number }[]) =>
    lots.map(({ lot, quantity }) => `${lot === "" ? "no lot" : lot}: ${plain(quantity)}`).join(", "),
  unpriced: (names: readonly string[]) => `No price is written for ${names.join("; ")}: not in the sum.`,
  nothing: "Nothing is left by the moves.",
  noMoves: "There is no table of moves yet. It begins with what you write down under Receiving.",
  overdrawn: (item: string, lot: string, amount: string) =>
    lot === ""
      ? `Of ${item}, ${amount} more went out than came in: add what was on the shelf before, under Receiving.`
      : `Of ${item}, lot ${lot}, more went out than came in: look at its rows.`,
} as const;
