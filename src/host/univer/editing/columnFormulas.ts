import type { Injector, Worksheet } from "@univerjs/core";
import { FormulaDataModel, LexerTreeBuilder } from "@univerjs/engine-formula";
import { reader } from "../../../engine/cells";

/** So many rows, the last ones, say what a column's formula is: a long table would take a while. */
const ASKED = 100;

/** Rows and columns from 0, both ends included. */
export interface Rows {
  readonly startRow: number;
  readonly endRow: number;
}

/**
 * The formula of a column: the one that more than half of its cells share which hold anything, each seen from its own
 * row. A number that was typed over it in a row or two does not end it.
 * @returns the formula as it stands in any row; null when the column has none
 */
export function columnFormula(
  injector: Injector,
  sheet: Worksheet,
  column: number,
  rows: Rows,
): ((row: number) => string) | null {
  const read = reader(injector, sheet);
  const formulas = injector.get(FormulaDataModel);
  const lexer = injector.get(LexerTreeBuilder);
  const { endRow } = rows;
  const counts = new Map<string, number>();
  let filled = 0;
  for (let row = Math.max(rows.startRow, endRow - ASKED + 1); row <= endRow; row++) {
    const formula = formulas.getFormulaStringByCell(row, column, sheet.getSheetId(), sheet.getUnitId());
    if (!formula) {
      if (read(row, column) !== null) filled++;
      continue;
    }
    filled++;
    // As it would stand in the last row: the same text from all that are alike.
    const last = row === endRow ? formula : lexer.moveFormulaRefOffset(formula, 0, endRow - row);
    counts.set(last, (counts.get(last) ?? 0) + 1);
  }
  const most = [...counts].find(([, count]) => count * 2 > filled)?.[0];
  return most === undefined ? null : (row) => lexer.moveFormulaRefOffset(most, 0, row - endRow);
}
