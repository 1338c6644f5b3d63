import type { CellValue } from "../../sheet/sheet";

/** 2010 to 2039, as spreadsheets count days: in which years a lot is typed. */
const [FIRST, LAST] = [40_179, 51_501];

/** The day that a cell with a lot is, where the spreadsheet took a lot such as 11-26 for one; undefined for all else. */
export const takenForDay = (cell: CellValue): number | undefined =>
  typeof cell === "number" && Number.isInteger(cell) && cell >= FIRST && cell <= LAST ? cell : undefined;

export const AS_TEXT = "type it again with ' before it, and it stays as it is written";
