import { columnLetters } from "../../sheet/columnLetters";
import type { Area } from "../book";

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

/** A sheet's name in quotes, for references: `'Tom''s list'`. */
export const quotedName = (name: string): string => `'${name.replaceAll("'", "''")}'`;
