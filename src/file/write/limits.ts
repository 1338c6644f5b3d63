import type { CellValue } from "../../sheet/sheet";
import type { Validation } from "../book";

/** What programs take of a file at most (Excel's specifications and limits, from memory). */
export const LONGEST_TEXT = 32_767;
export const LONGEST_TITLE = 32;
export const LONGEST_MESSAGE = 255;
const LONGEST_LIST = 255;

/** Points; characters. */
export const HIGHEST_ROW = 409.5;
export const WIDEST_COLUMN = 255;

/** The errors that a file can name (ECMA-376 Part 1, 18.18.11 and 18.17.3, from memory); younger ones stand as #VALUE!. */
const ERRORS = ["#NULL!", "#DIV/0!", "#VALUE!", "#REF!", "#NAME?", "#NUM!", "#N/A", "#GETTING_DATA"];

/** A value as a file can hold it. */
export function permittedValue(value: CellValue): CellValue {
  if (typeof value === "number") return Number.isFinite(value) ? value : { error: "#NUM!" };
  if (typeof value !== "object" || value === null) return value;
  return ERRORS.includes(value.error) ? value : { error: "#VALUE!" };
}

/** Whether a list is written out in a rule that is longer than files may hold: with it a file counts as damaged. */
export const isListTooLong = ({ formulas: [list = ""] }: Validation): boolean =>
  list.startsWith('="') && list.length - 3 > LONGEST_LIST;
