import { tidy } from "../../core/tidy";
import { moveAddition, type NewMove, openingMove } from "../../runsheet/record/moveRows";
import { type KnownItems, receiptDoubts, receiptMove } from "../../runsheet/record/receipt";
import type { WeightUnit } from "../../runsheet/settings";
import { type Ledger, ledgerOf } from "../../runsheet/stock/ledger";
import { openingsOf } from "../../runsheet/stock/openings";
import type { Addition } from "../../sheet/addition";
import { movesOn, type OnRecord } from "../actions/onRecord";
import type { Kept } from "../state/kept";
import type { ReadTables } from "../state/useTables";
import { serialOf, today } from "../today";
import { openingLine } from "../words/logging";
import { RECEIVING, receiptLine } from "../words/receiving";
import { namedItems } from "./namedItems";
import { type ParsedReceipt, parseReceipt, type TypedReceipt } from "./parseReceipt";

/** What the stock is seen by, read once: the names that are known, and what the moves add up to. */
export interface StockBeside {
  readonly known: KnownItems;
  readonly moves: OnRecord["moves"];
  readonly ledger: Ledger | undefined;
  /** Why nothing can be added to the moves as they stand. */
  readonly refused: string | undefined;
  readonly unit: WeightUnit;
}

export function besideOf(read: ReadTables, kept: Kept): StockBeside {
  const { unit } = kept.choices;
  const base = { known: namedItems(read, kept, unit), unit };
  try {
    const moves = movesOn(read, kept, unit);
    return { ...base, moves, ledger: moves && ledgerOf(moves.read), refused: undefined };
  } catch (error) {
    return { ...base, moves: undefined, ledger: undefined, refused: (error as Error).message };
  }
}

/** A receipt before it is added: what is wrong with it, and once nothing is, the row and what is doubtful. */
export interface ReceiptPlan extends Pick<ParsedReceipt, "wrong" | "blank"> {
  readonly ready:
    | {
        readonly line: string;
        /** What goes before it into the moves, and itself. */
        readonly lines: readonly string[];
        readonly table: string | undefined;
        readonly doubts: readonly string[];
        readonly addition: Addition;
      }
    | undefined;
}

export function planReceipt(typed: TypedReceipt, { known, moves, ledger, unit }: StockBeside): ReceiptPlan {
  const { receipt, wrong, blank } = parseReceipt(typed);
  if (!receipt) return { wrong, blank, ready: undefined };
  // The table counts in the unit of its heading: `ratio` of the setting's.
  const inSetting = receiptMove(receipt, known, unit);
  const change = receipt.unit === "pieces" ? inSetting.change : inSetting.change / (moves?.read.ratio ?? 1);
  const move: NewMove = { ...inSetting, change: tidy(change) };
  const use = receipt.unit === "pieces" ? "count" : "weight";
  const { openings, says } = openingsOf([{ item: move.item, use }], known.items, moves?.read ?? NO_MOVES);
  const before = openings.map((one) => openingMove(one, receipt.date));
  const movesUnit = moves?.read.unit ?? unit;
  const line = receiptLine(move, receipt);
  const openingLines = before.map((one) => openingLine(one, use === "count" ? undefined : movesUnit));
  return {
    wrong,
    blank,
    ready: {
      line,
      lines: [...openingLines, line],
      table: moves?.table.name,
      doubts: [
        ...before.map(() => RECEIVING.carried),
        ...says,
        ...receiptDoubts({
          receipt: { ...receipt, item: move.item },
          change: move.change,
          unit: movesUnit,
          known,
          ledger,
          today: serialOf(today()) ?? receipt.date,
        }),
      ],
      addition: moveAddition([...before, move], moves?.table, unit),
    },
  };
}

const NO_MOVES = { rows: [], ratio: 1, said: new Map() };

/** What of a plan was shown: the same must hold when it is added. */
export const shownOf = ({ ready }: ReceiptPlan): string | undefined =>
  ready && JSON.stringify([ready.lines, ready.table, ready.doubts]);

export const tableWords = (table: string | undefined): string =>
  table === undefined ? RECEIVING.willBegin : RECEIVING.willAdd(table);
