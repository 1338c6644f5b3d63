import type { Cell, Sheet } from "../../sheet/sheet";
import { address, type Rectangle } from "./rectangles";
import { typedText } from "./typedText";

/**
 * Excel holds 32,767 characters in a cell; the apostrophe that may mark text is sent with them, so one less is safe.
 */
const LONGEST_TEXT = 32_766;
/** Excel's own limit for a formula. */
const LONGEST_FORMULA = 8_192;
/** Excel on the web refuses requests of more than 5 MB; what is left pays for quotes, addresses and styles. */
const MOST_BYTES = 4_000_000;

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
  /** So many rows of formulas are sent with all else; those below follow in a second request. */
  readonly atOnce: number;
}

/**
 * Turns a described sheet into what Excel is sent. Throws what `contentsOf` does, and when it is too much.
 * @param requests how many there may be for it
 */
export function layOut(sheet: Sheet, requests: 1 | 2): Layout {
  // One by one: a call takes no hundred thousand arguments.
  let rows = 1;
  let columns = Math.max(1, sheet.widths.length);
  for (const { row, column, across = 1 } of sheet.cells) {
    rows = Math.max(rows, row + 1);
    columns = Math.max(columns, column + across);
  }
  const formats = block<string>(rows, columns);
  for (const { row, column, format } of sheet.cells) if (format) put(formats, row, column, format);
  const layout = {
    rows,
    columns,
    ...contentsOf(sheet.cells, { row: 0, column: 0, rows, columns }),
    formats: sheet.cells.some(({ format }) => format) ? formats : null,
  };
  return { ...layout, atOnce: rowsAtOnce(layout, requests) };
}

/** How many rows of formulas go into the first request, so that two of them are about equally long. */
function rowsAtOnce({ rows, constants, formats, formulas }: Omit<Layout, "atOnce">, requests: 1 | 2): number {
  let first = bytesOf(constants) + bytesOf(formats);
  const ofRows = (formulas ?? []).map(bytesOf);
  const all = ofRows.reduce((sum, bytes) => sum + bytes, first);
  if (all <= MOST_BYTES) return rows;
  let row = 0;
  while (row < ofRows.length && first < all / 2) first += ofRows[row++] as number;
  if (requests === 2 && Math.max(first, all - first) <= MOST_BYTES) return row;
  throw new Error(
    `The sheet would be ${(all / 1e6).toFixed(1)} MB, more than Excel takes at once. Choose fewer rows or shorten the longest texts.`,
  );
}

const bytesOf = (cells: unknown): number => new TextEncoder().encode(JSON.stringify(cells)).length;

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
