import { columnLetters, columnNumber } from "../sheet/columnLetters";
import type { Area } from "./book";

/** What a sheet of a file has. */
export const ROWS = 1_048_576;
export const COLUMNS = 16_384;

/** Row and column of `B3` or `$B$3`; undefined for what names no cell. */
export function cellPlace(text: string): { readonly row: number; readonly column: number } | undefined {
  const [, letters, digits] = /^\$?([A-Z]{1,3})\$?(\d{1,7})$/i.exec(text) ?? [];
  if (letters === undefined) return undefined;
  const [row, column] = [Number(digits) - 1, columnNumber(letters)];
  return row >= 0 && row < ROWS && column < COLUMNS ? { row, column } : undefined;
}

/** The rectangle of `B3`, `B3:C9`, `B:C` or `3:9`; undefined for what names none. */
export function areaOf(text: string): Area | undefined {
  const [from = "", to = from] = text.split(":");
  const [first, last] = [corner(from, 0, 0), corner(to, ROWS - 1, COLUMNS - 1)];
  if (!first || !last) return undefined;
  const [row, column] = [Math.min(first.row, last.row), Math.min(first.column, last.column)];
  return {
    row,
    column,
    rows: Math.max(first.row, last.row) - row + 1,
    columns: Math.max(first.column, last.column) - column + 1,
  };
}

/** The rectangles of a list with spaces between them. */
export const areasOf = (text: string): Area[] => text.split(/\s+/).flatMap((one) => areaOf(one) ?? []);

/** A whole column is said without a row, a whole row without a column. */
function corner(text: string, row: number, column: number): { row: number; column: number } | undefined {
  if (/^\$?[A-Z]{1,3}$/i.test(text)) return cellPlace(`${text}${row + 1}`);
  if (!/^\$?\d+$/.test(text)) return cellPlace(text);
  const said = Number(text.replace("$", "")) - 1;
  return said >= 0 && said < ROWS ? { row: said, column } : undefined;
}

/** `B3` of a row and a column from 0. */
export const cellAddress = (row: number, column: number): string => `${columnLetters(column)}${row + 1}`;

/** `B3:C9`, or `B3` for one cell. */
export function areaAddress({ row, column, rows, columns }: Area): string {
  const [from, to] = [cellAddress(row, column), cellAddress(row + rows - 1, column + columns - 1)];
  return from === to ? from : `${from}:${to}`;
}

/** Several areas, as the file format lists them. */
export const areaList = (areas: readonly Area[]): string => areas.map(areaAddress).join(" ");

/** Whether areas share a cell. */
export const overlap = (a: Area, b: Area): boolean =>
  a.row < b.row + b.rows &&
  b.row < a.row + a.rows &&
  a.column < b.column + b.columns &&
  b.column < a.column + a.columns;
