import { plain } from "../../core/check/plain";
import { tidy } from "../../core/tidy";
import { gramsIn } from "../../core/units/weight";
import { dayText } from "../dayText";
import { nearName } from "../plan/nearName";
import { sameName } from "../sameName";
import type { WeightUnit } from "../settings";
import type { Items } from "../tables/items";
import type { NewMove } from "./moveRows";
import { type Arrival, amountDoubts } from "./receiptAmount";

/** Packs that came in, as they were written down. */
export interface Receipt {
  /** Spreadsheet serials of the days. */
  readonly date: number;
  readonly item: string;
  readonly lot: string;
  readonly quantity: number;
  readonly unit: WeightUnit | "pieces";
  readonly paid: number | undefined;
  readonly bestBefore: number | undefined;
  readonly note: string;
  /** Whether nobody chose the unit for it: it is that of what was added before. */
  readonly isUnitKept?: boolean;
}

/** What is known of items in the other tables, each under its name without regard to case and spaces. */
export interface KnownItems {
  /** By the spelling that stands first. */
  readonly names: ReadonlyMap<string, string>;
  /** What is counted there, and what is weighed. */
  readonly counted: ReadonlySet<string>;
  readonly weighed: ReadonlySet<string>;
  /** What the tables of items say, in the unit of the settings. */
  readonly items: Items;
}

/** The row for a receipt. Its item is spelt as in the other tables, its weight is in the unit of the table of moves. */
export function receiptMove(receipt: Receipt, { names }: KnownItems, movesUnit: WeightUnit): NewMove {
  const { date, item, lot, quantity, unit, paid, bestBefore, note } = receipt;
  const change = unit === "pieces" ? quantity : (quantity * gramsIn("unit", unit)) / gramsIn("unit", movesUnit);
  return {
    date,
    item: names.get(sameName(item)) ?? item,
    lot,
    change: tidy(change),
    paid,
    bestBefore,
    note,
  };
}

/** What of a receipt may be a slip, to be thought of before it is added. */
export function receiptDoubts({ known, today, ...arrival }: Arrival & { known: KnownItems; today: number }): string[] {
  const { names, counted, weighed, items } = known;
  const { receipt, ledger } = arrival;
  const { date, item, lot, quantity, unit, bestBefore } = receipt;
  const key = sameName(item);
  const before = ledger?.items.get(key)?.lots.find((one) => lot !== "" && sameName(one.lot) === sameName(lot));
  const amount = `${plain(quantity)} ${unit}`;
  return [
    ...(names.size > 0 && !names.has(key)
      ? [`${item} stands in no other table: is it ${nearName(item, [...names.values()]) ?? "spelt as there"}, or new?`]
      : []),
    ...(lot === "" ? ["no lot is written: what it goes into cannot be traced"] : []),
    ...(before && before.received > 0
      ? [
          `lot ${before.lot} of ${item} came in before${before.since === undefined ? "" : `, on ${dayText(before.since)}`}: is this more of it?`,
        ]
      : []),
    ...(unit !== "pieces" && counted.has(key) && !weighed.has(key)
      ? [`${item} is counted in the other tables: is ${amount} right?`]
      : []),
    ...(unit === "pieces" && weighed.has(key) && !counted.has(key)
      ? [`${item} is weighed in the other tables: is ${amount} right?`]
      : []),
    ...amountDoubts(arrival, items),
    ...(bestBefore !== undefined && bestBefore < date ? ["its best before was over when it came in"] : []),
    ...(date > today ? ["the day it came in lies ahead"] : []),
  ];
}
