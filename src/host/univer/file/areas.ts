/** Rectangles of a file as Univer's ranges, and back. */

import type { IRange } from "@univerjs/core";
import { COLUMNS, ROWS } from "../../../file/addresses";
import type { Area } from "../../../file/book";

/** How many rows and columns a sheet of the file format has. */
export const WHOLE = { rows: ROWS, columns: COLUMNS };

/** How many rows and columns a sheet has in Univer: enough for what it holds and some to work in. */
export interface Extent {
  readonly rows: number;
  readonly columns: number;
}

/** Univer looks at each cell of a rule, whether the sheet has it here or not: rules for so many beyond it stay aside. */
const MOST_BEYOND = 5000;

/** Whole rows and columns end with the sheet as Univer has it. What lies beyond it is as large as in the file. */
export function rangeOf({ row, column, rows, columns }: Area, extent: Extent): IRange {
  return {
    startRow: row,
    endRow: lastOf(row, rows, extent.rows),
    startColumn: column,
    endColumn: lastOf(column, columns, extent.columns),
  };
}

const lastOf = (first: number, count: number, most: number): number =>
  first < most ? Math.min(first + count, most) - 1 : first + count - 1;

/** Of these, those that Univer is given. */
export const rangesOf = (areas: readonly Area[], extent: Extent): IRange[] =>
  areas.filter((area) => !isAside(area, extent)).map((area) => rangeOf(area, extent));

export function isAside(area: Area, extent: Extent): boolean {
  if (area.row < extent.rows && area.column < extent.columns) return false;
  const { startRow, endRow, startColumn, endColumn } = rangeOf(area, extent);
  return (endRow - startRow + 1) * (endColumn - startColumn + 1) > MOST_BEYOND;
}

/** What reaches to the end of the sheet as Univer has it reaches to the end of the file's. Whole rows have no numbers. */
export function areaOf(range: IRange, extent: Extent): Area {
  const [row, rows] = spanOf(range.startRow, range.endRow, extent.rows, WHOLE.rows);
  const [column, columns] = spanOf(range.startColumn, range.endColumn, extent.columns, WHOLE.columns);
  return { row, column, rows, columns };
}

/** Where it begins, and how many there are up to its last one. */
function spanOf(start: number, end: number | undefined, most: number, whole: number): [number, number] {
  // What was pushed beyond the end of the file's sheet stays on its last cells.
  const first = Math.min(start || 0, whole - 1);
  const last = end ?? Number.NaN;
  if (first >= most) return [first, Math.min(last + 1, whole) - first];
  return [first, (last < most - 1 ? last + 1 : whole) - first];
}
