import type { Cell, CellValue } from "../sheet/sheet";
import { FROZEN_NOTE, LIVE_NOTE } from "./describeRun";

/** Columns that hold planned figures, by what the key of a row says it is; from 0. */
const PLANNED: Readonly<Record<string, readonly number[]>> = {
  wax: [3],
  scent: [3],
  additive: [3],
  melted: [3, 5],
  load: [1],
  vessel: [3, 6],
  totals: [1, 2, 3, 4, 5],
};
const KEY = 7;

/**
 * The cells that turn a live run sheet into a frozen one: each planned figure as the number it shows now, and the line
 * that says which of the two it is. What follows the actual weights stays a formula. Empty when the sheet is not live.
 * @param rows the cells of the sheet from A1 on
 */
export function freezeRun(rows: readonly (readonly CellValue[])[]): Cell[] {
  const note = rows.findIndex((row) => row[0] === LIVE_NOTE);
  if (note < 0) return [];
  const cells: Cell[] = [];
  for (const [row, values] of rows.entries()) {
    const what = /^\S+ (\w+)$/.exec(String(values[KEY] ?? ""))?.[1];
    for (const column of (what && PLANNED[what]) || []) {
      const value = values[column];
      if (typeof value === "number") cells.push({ row, column, content: { number: value } });
      else if (typeof value === "string") cells.push({ row, column, content: { text: value } });
      else if (what === "melted") cells.push({ row, column, content: { text: "" } });
      else throw new Error(`Row ${row + 1} shows no number to keep. Mend it, then freeze the sheet.`);
    }
  }
  // Last, so that a sheet that was frozen only in part does not say it is.
  cells.push({ row: note, column: 0, content: { text: FROZEN_NOTE } });
  return cells;
}
