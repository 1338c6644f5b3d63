import type { Cell, Sheet } from "../../sheet/sheet";
import { address, type Rectangle } from "./rectangles";
import { typedText } from "./typedText";

/**
 * Excel holds 32,767 characters in a cell; the apostrophe that may mark text is sent with them, so one less is safe.
 */
const LONGEST_TEXT = 32_766;
/** Excel's own limit for a formula. */
const LONGEST_FORMULA = 8_192;

/** What the cells of a rectangle are to hold, as whole blocks; null leaves a cell as it is. */
export interface Contents {
  readonly constants: (string | number | null)[][];
  /** Null when there are none. */
  readonly formulas: (string | null)[][] | null;
}

/** A sheet's cells as blocks that start at A1. */
export interface Layout extends Contents {
  readonly rows: number;
  readonly columns: number;
  /** Null when there are none. */
  readonly formats: (string | null)[][] | null;
}

/** Turns a described sheet into what Excel is sent. Throws what `contentsOf` does. */
export function layOut(sheet: Sheet): Layout {
  // One by one: a call takes no hundred thousand arguments.
  let rows = 1;
  let columns = Math.max(1, sheet.widths.length);
  for (const { row, column, across = 1 } of sheet.cells) {
    rows = Math.max(rows, row + 1);
    columns = Math.max(columns, column + across);
  }
  const formats = block<string>(rows, columns);
  for (const { row, column, format } of sheet.cells) if (format) put(formats, row, column, format);
  return {
    rows,
    columns,
    ...contentsOf(sheet.cells, { row: 0, column: 0, rows, columns }),
    formats: sheet.cells.some(({ format }) => format) ? formats : null,
  };
}

/**
 * What cells within a rectangle are to hold. Text is sent so that it stays the text it is, whether it looks like a
 * formula, a date, a number or begins with an apostrophe itself. Throws, naming the cell, where a cell could not hold
 * its content.
 */
export function contentsOf(cells: readonly Cell[], { row: top, column: left, rows, columns }: Rectangle): Contents {
  const constants = block<string | number>(rows, columns);
  const formulas = block<string>(rows, columns);
  for (const cell of cells) {
    const [row, column, content] = [cell.row - top, cell.column - left, cell.content];
    if (!content) continue;
    if ("formula" in content) put(formulas, row, column, checkedFormula(cell, content.formula));
    else put(constants, row, column, "text" in content ? typed(cell, content.text) : finite(cell, content.number));
  }
  return { constants, formulas: cells.some(({ content }) => content && "formula" in content) ? formulas : null };
}

function block<T>(rows: number, columns: number): (T | null)[][] {
  return Array.from({ length: rows }, () => Array<T | null>(columns).fill(null));
}

function put<T>(into: (T | null)[][], row: number, column: number, value: T): void {
  (into[row] as (T | null)[])[column] = value;
}

function typed(cell: Cell, text: string): string {
  if (text.length > LONGEST_TEXT) {
    throw new Error(
      `Cell ${place(cell)} would hold ${text.length.toLocaleString("en-US")} characters and Excel takes at most ${LONGEST_TEXT.toLocaleString("en-US")}. Shorten the text that begins "${text.slice(0, 40)}".`,
    );
  }
  return typedText(text);
}

function finite(cell: Cell, number: number): number {
  if (!Number.isFinite(number)) throw new Error(`Cell ${place(cell)} would hold ${number}, which is no number.`);
  return number;
}

function checkedFormula(cell: Cell, formula: string): string {
  if (!formula.startsWith("=")) throw new Error(`The formula of cell ${place(cell)} does not begin with "=".`);
  if (formula.length > LONGEST_FORMULA) throw new Error(`The formula of cell ${place(cell)} is too long for Excel.`);
  return formula;
}

const place = ({ row, column }: Cell): string => address({ row, column, rows: 1, columns: 1 });
