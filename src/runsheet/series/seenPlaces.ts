import { columnLetters } from "../../sheet/columnLetters";
import type { Cell, Content, Look } from "../../sheet/sheet";
import { TRACK } from "./ratePicture";
import { KEYS } from "./seenColumns";

/** Where everything stands on the sheet of a series: rows and columns from 0. */

/** Columns that show; those of candles and of wicks share them. Signs of the picture are nearly two digits wide. */
export const WIDTHS = [20, 18, 10, 9, 9, 9, 12, 11, 11, 11, 11, 16, 11, 27, 2 * TRACK] as const;
export const ACROSS = WIDTHS.length;
export const HOURS = [1, 2, 3, 4] as const;

/** What the columns of candles and of wicks hold, the hidden ones behind those that show. */
const BOTH = { name: 0, rate: 3, flame: 6, pool: 7, soot: 11, throw: 12, picture: 14 } as const;
export const CANDLE = {
  ...BOTH,
  ...{ wick: 1, hours: 2, end: 4, width: 5, seen: 13 },
  ...{ state: ACROSS, remarks: ACROSS + 1, compared: ACROSS + 2, rise: ACROSS + 3, widestPool: ACROSS + 4 },
  ...{ scores: ACROSS + 8, scored: ACROSS + 9, notes: ACROSS + 10, at: ACROSS + 16, first: ACROSS + 17 },
  /** The names of all candles of the series, as one formula finds them. */
  list: ACROSS + 18,
  /** The readings of the first candle, those of the next one behind them. */
  looks: ACROSS + 19,
} as const;
export const WICK = {
  ...BOTH,
  ...{ passedWords: 1, bound: 2, lower: 4, upper: 5, lifeWords: 13 },
  ...{ count: ACROSS, passed: ACROSS + 1, failed: ACROSS + 2, lifeBy: ACROSS + 3 },
  ...{ life: ACROSS + 4, lifeLower: ACROSS + 5, lifeUpper: ACROSS + 6, alike: ACROSS + 7 },
  /** The block that WICKCOMPARE fills, six columns; above it the ends of the picture. */
  block: ACROSS + 10,
} as const;

/** Readings of a candle that there is room for: sixteen cycles with a look each hour. */
export const MOST_LOOKS = 80;
/** Room for what is added after the sheet is written. */
export const MORE_CANDLES = 6;
export const MORE_WICKS = 2;

/** The cells that say which candles these are: three below each other, three more beside them, then their fill. */
const HEAD = { row: 3, rows: 3, columns: [0, 5], fill: 11 } as const;
export interface HeadCell {
  readonly row: number;
  readonly label: number;
  readonly labelAcross: number;
  readonly value: number;
}
export function headCell(field: (typeof KEYS)[number] | "fill"): HeadCell {
  if (field === "fill") return { row: HEAD.row, label: HEAD.fill, labelAcross: 2, value: HEAD.fill + 2 };
  const place = KEYS.indexOf(field);
  const label = HEAD.columns[place < HEAD.rows ? 0 : 1];
  const labelAcross = label === 0 ? 1 : 2;
  return { row: HEAD.row + (place % HEAD.rows), label, labelAcross, value: label + labelAcross };
}
export const NOTE_ROW = HEAD.row + HEAD.rows;
/** Hidden, above the names of all candles: which headings were changed. */
export const RENAMED = { row: 0, column: CANDLE.list } as const;

/** A block of rows: that of its heading, and how many stand below it. */
export interface Block {
  readonly heading: number;
  readonly count: number;
}

export function blocksFor(candleCount: number, wickCount: number) {
  const [ofWicks, ofCandles] = [wickCount + MORE_WICKS, candleCount + MORE_CANDLES];
  // Two rows of alerts stand below the note.
  const verdicts = { heading: NOTE_ROW + 3, count: ofWicks };
  const cautions = verdicts.heading + 1 + 2 * ofWicks;
  const figures = { heading: cautions + 3, count: ofWicks };
  const candles = { heading: figures.heading + ofWicks + 2, count: ofCandles };
  const words = { heading: candles.heading + ofCandles + 2, count: ofCandles };
  return { verdicts, cautions, figures, candles, words };
}
export type Blocks = ReturnType<typeof blocksFor>;

/** An absolute reference to a cell of the sheet itself. */
export const cellAt = (column: number, row: number): string => `$${columnLetters(column)}$${row + 1}`;
export const rangeAt = (column: number, { heading, count }: Block): string =>
  `${cellAt(column, heading + 1)}:${cellAt(column, heading + count)}`;
export function headRef(field: Parameters<typeof headCell>[0]): string {
  const { row, value } = headCell(field);
  return cellAt(value, row);
}

/** Cells as they are put down. */
export class SheetCells {
  readonly cells: Cell[] = [];

  put(row: number, column: number, content: Content | undefined, look: Look = "body", more: Partial<Cell> = {}): void {
    this.cells.push({ row, column, look, ...(content && { content }), ...more });
  }
  text(row: number, column: number, text: string, look?: Look, more?: Partial<Cell>): void {
    this.put(row, column, { text }, look, more);
  }
  formula(row: number, column: number, formula: string, more?: Partial<Cell>, look?: Look): void {
    this.put(row, column, { formula }, look, more);
  }
  alert(row: number, formula: string): void {
    this.formula(row, 0, formula, { across: ACROSS }, "alert");
  }
  /** A name, and what stands beside it over the whole width. */
  heading(row: number, name: string, beside: string): void {
    this.text(row, 0, name, "heading");
    this.text(row, 1, beside, "heading", { across: ACROSS - 1 });
  }
  headings(row: number, texts: readonly string[]): void {
    for (const [column, text] of texts.entries()) {
      this.text(row, column, text, "heading", column > 0 ? { align: "center" } : {});
    }
  }
}
