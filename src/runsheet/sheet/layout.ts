import { CHOICES, type WeightUnit } from "../settings";

/** Where things stand on a run sheet. What writes a sheet, reads it back, freezes and compares it agrees here. */

/** Columns from 0. Rows of ingredients and rows of vessels share some. */
export const AT = {
  name: 0,
  share: 1,
  count: 1,
  target: 1,
  days: 1,
  basis: 2,
  fill: 2,
  until: 2,
  planned: 3,
  actual: 4,
  good: 4,
  weighed: 5,
  label: 6,
  remark: 6,
  key: 7,
} as const;

/** Cells of the head that the formulas of a live sheet refer to. */
export const HEAD = { date: "$B$2", division: "$B$3", capacity: "$D$3", loss: "$G$3" } as const;

/** The lines that say which of the two a sheet is. */
export const LIVE_NOTE =
  "Live formulas: change a count, a fill, a share or a figure above and the weights follow; shelf and cost stay.";
export const FROZEN_NOTE = "Plain numbers: a changed count moves no weight.";

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
    if (unit) return { unit, division: row[1] };
  }
  return undefined;
}

export const potTitle = (scent: string, pot: number, pots: number): string => `${scent}: pot ${pot} of ${pots}`;
export const scentIn = (title: unknown): string => String(title ?? "").replace(/: pot \d+ of \d+$/, "");
