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

/** Within the sheet as Univer has it: whole rows and columns end with it. */
export function rangeOf({ row, column, rows, columns }: Area, extent: Extent): IRange {
  return {
    startRow: row,
    endRow: Math.min(row + rows, extent.rows) - 1,
    startColumn: column,
    endColumn: Math.min(column + columns, extent.columns) - 1,
  };
}

/** Of these, those that begin within the sheet as Univer has it. */
export const rangesOf = (areas: readonly Area[], extent: Extent): IRange[] =>
  areas.filter((area) => !isBeyond(area, extent)).map((area) => rangeOf(area, extent));

export const isBeyond = ({ row, column }: Area, { rows, columns }: Extent): boolean => row >= rows || column >= columns;

/** What reaches to the end of the sheet as Univer has it reaches to the end of the file's. Whole rows have no numbers. */
export function areaOf(range: IRange, extent: Extent): Area {
  const row = range.startRow || 0;
  const column = range.startColumn || 0;
  const lastRow = range.endRow ?? Number.NaN;
  const lastColumn = range.endColumn ?? Number.NaN;
  return {
    row,
    column,
    rows: (lastRow < extent.rows - 1 ? lastRow + 1 : WHOLE.rows) - row,
    columns: (lastColumn < extent.columns - 1 ? lastColumn + 1 : WHOLE.columns) - column,
  };
}
