/** The words of receiving packs. */

import { plain } from "../../core/check/plain";
import { dayText } from "../../runsheet/dayText";
import type { NewMove } from "../../runsheet/record/moveRows";
import type { Receipt } from "../../runsheet/record/receipt";

export const RECEIVING = {
  heading: "Receiving",
  hint: "A row for each lot. What came in adds up with what the pours use: so the moves know what is left of each lot.",
  item: "Item",
  lot: "Lot",
  quantity: "Quantity",
  unit: "Unit",
  pieces: "pieces",
  date: "Received",
  paid: "Paid for all of it",
  bestBefore: "Best before",
  note: "Note",
  add: "Add to moves",
  addAnyway: "Add anyway",
  willAdd: (table: string) => `To add to ${table}:`,
  willBegin: "Moves, a new table, with:",
  doubts: "Check these first:",
  carried:
    "the first row is what stands in On hand: from now on the moves say what is on hand, and On hand does not count. Is what came in part of it already? Then take it off there first",
  changed: "The tables have changed since the row was shown. Look at it once more, then press again.",
  done: (line: string, table: string) => `${line} is in ${table} now.`,
  noItem: "write what came in",
  noQuantity: "write how much came in",
  notWhole: (quantity: string) => `${quantity} is no whole number: pieces are counted`,
  noMoney: (typed: string) => `"${typed}" is no sum of money; write a plain number`,
  noDay: "choose a day",
} as const;

/** A receipt in a line: `Soy wax, lot L-12: +5 kg, paid 40, best before 2027-11-01`. */
export function receiptLine({ item, lot, paid, bestBefore }: NewMove, { quantity, unit }: Receipt): string {
  const parts = [
    `+${plain(quantity)} ${unit}`,
    ...(paid === undefined ? [] : [`paid ${plain(paid)}`]),
    ...(bestBefore === undefined ? [] : [`best before ${dayText(bestBefore)}`]),
  ];
  return `${item}${lot === "" ? ", no lot" : `, lot ${lot}`}: ${parts.join(", ")}`;
}
