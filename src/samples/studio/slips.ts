import type { Cell } from "../../sheet/sheet";
import { cell } from "../layout";

/**
 * What was typed and cannot be counted with, said above the table that it stands in. A sum passes over it, so without
 * a word the figures that follow from it would be wrong and look right.
 */

/** A line that names the first row of a table where something holds; empty where none does. */
export const firstRow = (table: string, column: string, isWrong: string, words: string): string =>
  `IFERROR("Row "&(MATCH(1,INDEX(((${isWrong})>0)*1,0),0)+ROW(INDEX(${table}[${column}],1))-1)&": ${words}","")`;

/** Whether cells hold something other than a number; blank ones are none. */
export const isNoNumber = (cells: string): string => `(1-ISNUMBER(${cells}))*(1-ISBLANK(${cells}))`;

/** Whether another table has no row of these names; a blank name has none either. */
export const isUnknown = (names: string, table: string, key: string): string =>
  `(COUNTIF(${table}[${key}],${names})=0)`;

/** All of these texts that say something. */
export const allSaid = (texts: readonly string[]): string => `TRIM(${texts.join('&" "&')})`;

/** Where a sheet says the first slip in its table: right above the heading, or the settings. */
export const SLIP_CELL = "$A$3";
const SLIP_ROW = 2;

/** The line there; nothing stands in it while all is well. */
export const slipLine = (formula: string, across: number): Cell =>
  cell(SLIP_ROW, 0, { formula: `=${formula}` }, { look: "alert", across });
