import { CellValueType, type ICellData } from "@univerjs/core";
import type { Cell, Content, Sheet } from "../sheet/sheet";
import { isPlainText } from "./plainText";
import { type FormulaPlace, type PlacedTable, readableFormula } from "./references";

/** A described content as the engine's. A text is forced to stay one: else `=1+1` would become a formula when edited. */
export function cellContent(content: Content, place: FormulaPlace, tables: readonly PlacedTable[]): ICellData {
  if ("formula" in content) return { f: readableFormula(content.formula, place, tables) };
  if ("number" in content) return { v: content.number, t: CellValueType.NUMBER };
  return { v: content.text, t: isPlainText(content.text) ? CellValueType.STRING : CellValueType.FORCE_STRING };
}

/** Room below and beside what a sheet holds, for the user and for results that spill. */
const SPARE = { rows: 200, columns: 12 };
const LEAST = { rows: 1000, columns: 26 };

/** How many rows and columns a described sheet gets. */
export function sheetSize({ cells }: Sheet): { rowCount: number; columnCount: number } {
  const last = (of: (cell: Cell) => number) => cells.reduce((most, cell) => Math.max(most, of(cell)), 0);
  return {
    rowCount: Math.max(LEAST.rows, last(({ row }) => row) + SPARE.rows),
    columnCount: Math.max(LEAST.columns, last(({ column, across = 1 }) => column + across) + SPARE.columns),
  };
}
