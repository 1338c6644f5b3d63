import { columnLetters } from "../../sheet/columnLetters";
import { CHOICES, type WeightUnit } from "../settings";

/** Where things stand on a run sheet: whatever writes one, reads it back, compares it or changes it agrees here. */

/** Columns from 0. Rows of different things share some. */
export const AT = {
  name: 0,
  // A figure of the head.
  figure: 1,
  // An ingredient of a pot, with what was weighed of it.
  share: 1,
  basis: 2,
  planned: 3,
  actual: 4,
  lotUsed: 5,
  remark: 6,
  // What is to say beside the total of a pot, beside a load, and beside a cure.
  potRemark: 5,
  loadRemark: 3,
  cureRemark: 3,
  // A step.
  target: 1,
  // Candles of one kind in a pot, with what came of them.
  count: 1,
  fill: 2,
  fillShown: 3,
  good: 4,
  weighed: 5,
  label: 6,
  // The totals of a scent.
  candles: 1,
  pots: 2,
  wax: 3,
  scent: 4,
  melted: 5,
  yield: 6,
  // A cure.
  days: 1,
  until: 2,
  key: 7,
} as const;
/** The widths of the columns, in characters, without that of the keys. */
export const WIDTHS: readonly number[] = [30, 13, 14, 14, 14, 15, 27];

export type SheetColumn = keyof typeof AT;

const letterOf = (column: SheetColumn): string => columnLetters(AT[column]);

/** A cell as formulas name it: `B5`. Rows are counted from 1. */
export const cellAt = (column: SheetColumn, row: number): string => `${letterOf(column)}${row}`;

/** Cells below each other: `B5:B9`. */
export const rangeAt = (column: SheetColumn, first: number, last: number): string =>
  `${cellAt(column, first)}:${cellAt(column, last)}`;

/** The cells of a column from the first row on, which stay the same where a formula is copied down: `B$1:B$9`. */
export const downTo = (column: SheetColumn, last: number): string =>
  `${letterOf(column)}$1:${letterOf(column)}$${last}`;

/** The keys from the first row on, the same wherever a formula is copied to. */
export const keysTo = (last: number): string => `$${letterOf("key")}$1:$${letterOf("key")}$${last}`;

/** Cells of the head that the formulas of a live sheet refer to. */
export const HEAD = { date: "$B$2", division: "$B$3", capacity: "$D$3", loss: "$G$3" } as const;

/** The lines that say which of the two a sheet is. */
export const LIVE_NOTE =
  "Live formulas: change a count, a fill, a share or a figure above and the weights follow; shelf and cost stay.";
export const PLAIN_NOTE = "Plain numbers: a changed count moves no weight.";

/** Whether a line is the one that says live, also on sheets that were written with other words. */
export const isLiveNote = (line: unknown): boolean => /^Live( formulas)?: change a count, /.test(String(line ?? ""));

/** What a row holds. */
export type RowKind =
  | "head"
  | "pot"
  | "wax"
  | "scent"
  | "additive"
  | "melted"
  | "load"
  | "weighed"
  | "step"
  | "vessel"
  | "totals"
  | "others"
  | "cure";

/** The keys of the rows of a scent, numbered from 1: what formulas add up and what is read back. */
export const keyOf = (scent: number | "*", what: RowKind): string => `${scent} ${what}`;

/** What a row with this key holds; undefined for a row without one. */
export const kindOfKey = (key: unknown): RowKind | undefined =>
  /^(?:\d+|\*) (\w+)$/.exec(String(key ?? ""))?.[1] as RowKind | undefined;

/** The name of the sheet that holds a run. */
export const sheetNameOf = (lot: string): string => `Run ${lot}`;
export const titleOf = (lot: string): string => `Run sheet ${lot}`;
export const lotIn = (title: unknown): string | undefined => /^Run sheet (\S+)$/.exec(String(title ?? ""))?.[1];

export const DATE = "Date";
export const divisionLabel = (unit: string): string => `Scale reads to (${unit})`;
/**
 * The scale that a sheet names, also in the words of sheets that were written before: the unit of its weights, and the
 * cell with what it reads to. Undefined when it names none.
 */
export function scaleOn<T>(rows: readonly (readonly T[])[]): { unit: WeightUnit; division: T | undefined } | undefined {
  for (const row of rows) {
    const named = /^Scale (?:reads to|division) \((\w+)\)$/.exec(String(row[AT.name] ?? ""))?.[1];
    const unit = CHOICES.unit.find((one) => one === named);
    if (unit) return { unit, division: row[AT.figure] };
  }
  return undefined;
}

export const potTitle = (scent: string, pot: number, pots: number): string => `${scent}: pot ${pot} of ${pots}`;
export const scentIn = (title: unknown): string => String(title ?? "").replace(/: pot \d+ of \d+$/, "");
