import { columnLetters } from "../../sheet/columnLetters";
import { CHOICES, type WeightUnit } from "../settings";

/** Where things stand on a run sheet: whatever writes one, reads it back, compares it or changes it agrees here. */

/**
 * Columns from 0. Rows of different things share some. A step stands beside the ingredients of its pot, and what is to
 * say of a pot in a line of its own: the columns that it is gathered from are hidden.
 */
export const AT = {
  name: 0,
  // A figure of the head, and beside the title whether the sheet is live.
  figure: 1,
  mark: 6,
  // An ingredient of a pot, with what was weighed of it.
  share: 1,
  basis: 2,
  planned: 3,
  actual: 4,
  lotUsed: 5,
  // A step beside it, as done.
  step: 6,
  target: 7,
  temperature: 8,
  time: 9,
  // Candles of one kind in a pot, with what came of them.
  count: 1,
  fill: 2,
  fillShown: 3,
  good: 4,
  weighed: 5,
  wick: 6,
  label: 7,
  // Something to fetch, with a box to tick and one for its lot, and another one beside it; and what is missing.
  needed: 1,
  box: 2,
  lot: 3,
  nameRight: 4,
  neededRight: 6,
  boxRight: 7,
  lotRight: 8,
  onHand: 2,
  missing: 3,
  // The totals of a scent, and its cure.
  candles: 1,
  pots: 2,
  wax: 3,
  scent: 4,
  melted: 5,
  yield: 6,
  until: 8,
  days: 9,
  // Hidden: what is to say of an ingredient, of a pot, of a load as planned, of a cure; of a load as weighed; which thing
  // of all that is fetched stands in the row, and which one beside it; and its key.
  remark: 10,
  potRemark: 10,
  plannedRemark: 10,
  loadRemark: 11,
  thingRight: 11,
  thing: 12,
  key: 13,
} as const;
export type SheetColumn = keyof typeof AT;
/** Where the columns of a sheet stand; -1 for one that it does not have. */
export type Columns = Readonly<Record<SheetColumn, number>>;

/** The columns of sheets that were written before the steps stood beside the ingredients. */
const BEFORE: Columns = {
  ...AT,
  ...{ mark: -1, step: -1, target: 1, temperature: 4, time: 5, wick: -1, label: 6 },
  ...{ needed: -1, box: -1, lot: -1, nameRight: -1, neededRight: -1, boxRight: -1, lotRight: -1 },
  ...{ onHand: -1, missing: -1, days: 1, until: 2 },
  ...{ remark: 6, potRemark: 5, plannedRemark: 3, loadRemark: 3, thingRight: -1, thing: -1, key: 7 },
};

/** The columns of a sheet, by where its keys stand. */
export const columnsOn = (rows: readonly (readonly unknown[])[]): Columns =>
  rows.some((row) => kindOfKey(row[BEFORE.key]) !== undefined) && !rows.some((row) => kindOfKey(row[AT.key]))
    ? BEFORE
    : AT;

/**
 * The widths of the columns that show, in characters: together as wide as A4 holds of letters of ten points, and each
 * just wide enough for the words of its headings, so that these take two lines.
 */
export const WIDTHS: readonly number[] = [21, 8.5, 9.1, 10.4, 9.1, 9, 14.3, 7, 14.2, 6.4];
/** Columns that formulas use and nobody needs to see. */
export const HIDDEN = AT.key + 1 - WIDTHS.length;

const letterOf = (column: SheetColumn): string => columnLetters(AT[column]);

/** A cell as formulas name it: `B5`. Rows are counted from 1. */
export const cellAt = (column: SheetColumn, row: number): string => `${letterOf(column)}${row}`;

/** Cells below each other: `B5:B9`. */
export const rangeAt = (column: SheetColumn, first: number, last: number): string =>
  `${cellAt(column, first)}:${cellAt(column, last)}`;

/** Rows from the first to the last one, counted from 1. */
export interface Rows {
  readonly first: number;
  readonly last: number;
}

/** The cells of a column that stay the same where a formula is copied to: `$B$1:$B$9`. */
export const fixedAt = (column: SheetColumn, { first, last }: Rows): string =>
  `$${letterOf(column)}$${first}:$${letterOf(column)}$${last}`;

/** Cells of the head that the formulas of a live sheet refer to. */
export const HEAD = { date: "$B$2", division: "$B$3", capacity: "$F$3", loss: "$J$3" } as const;

/** The lines that say which of the two a sheet is. */
export const LIVE_NOTE =
  "Live formulas: change a count, a fill, a share or a figure above and the weights follow; what is on hand stays.";
export const PLAIN_NOTE = "Plain numbers: a changed count moves no weight.";
/** The same at a glance, beside the title: in capitals, and framed, what moves. */
export const LIVE_MARK = "LIVE: weights follow";
export const PLAIN_MARK = "Plain numbers";

/** Whether a line is the one that says live, also on sheets that were written with other words. */
export const isLiveNote = (line: unknown): boolean => /^Live( formulas)?: change a count, /.test(String(line ?? ""));

/** What a row holds. */
export type RowKind =
  | "mark"
  | "head"
  | "thing"
  | "lack"
  | "pot"
  | "wax"
  | "scent"
  | "additive"
  | "melted"
  | "loads"
  // On sheets that were written before: a load as planned and the same as weighed.
  | "load"
  | "weighed"
  | "step"
  | "vessel"
  | "totals"
  | "scents"
  | "others"
  // On sheets that were written before; now a cure stands in the row of its scent's totals.
  | "cure";

/** The keys of the rows of a scent, numbered from 1: what formulas add up and what is read back. */
export const keyOf = (scent: number | "*", what: RowKind): string => `${scent} ${what}`;

/** The key as a hidden cell of its row. */
export const keyed = (scent: number | "*", what: RowKind): Readonly<Record<number, { text: string }>> => ({
  [AT.key]: { text: keyOf(scent, what) },
});

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

/** The title of a pot; with its wax where one scent is poured in several. */
export const potTitle = (scent: string, pot: number, pots: number, wax = ""): string =>
  `${scent}: pot ${pot} of ${pots}${wax === "" ? "" : ` in ${wax}`}`;
/** What the totals of a scent are called, and the scent in it. */
export const totalsName = (scent: string, wax: string): string => (wax === "" ? scent : `${scent}: in ${wax}`);
export const scentInTotals = (name: string): string => name.replace(/: in .*$/, "");
export const scentIn = (title: unknown): string => String(title ?? "").replace(/: pot \d+ of \d+( in .*)?$/, "");
