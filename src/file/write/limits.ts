import type { Validation } from "../book";

/** What programs take of a file at most (Excel's specifications and limits, from memory). */
export const LONGEST_TEXT = 32_767;
export const LONGEST_TITLE = 32;
export const LONGEST_MESSAGE = 255;
const LONGEST_LIST = 255;

/** Whether a list is written out in a rule that is longer than files may hold: with it a file counts as damaged. */
export const isListTooLong = ({ formulas: [list = ""] }: Validation): boolean =>
  list.startsWith('="') && list.length - 3 > LONGEST_LIST;
