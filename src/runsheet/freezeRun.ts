import type { Cell, CellValue } from "../sheet/sheet";
import { AT, FROZEN_NOTE, isLiveNote, kindOfKey, type RowKind } from "./layout";

/** Columns that hold planned figures, by what a row holds. */
const PLANNED: Readonly<Partial<Record<RowKind, readonly number[]>>> = {
  wax: [AT.planned],
  scent: [AT.planned],
  additive: [AT.planned],
  melted: [AT.planned, 5],
  load: [AT.share, AT.planned],
  vessel: [AT.planned, AT.label],
  totals: [1, 2, 3, 4, 5],
  others: [5],
  cure: [AT.until],
};

/** Places of the words that stand beside a figure only where something is out of the ordinary. */
const isRemark = (kind: RowKind, column: number): boolean =>
  (kind === "melted" && column === 5) || (kind === "load" && column === AT.planned);

/**
 * The cells that turn a live run sheet into one of plain numbers: each planned figure as the number it shows now, and the line
 * that says which of the two it is. What follows the actual weights stays a formula. Empty when the sheet is not live.
 * @param rows the cells of the sheet from A1 on
 */
export function freezeRun(rows: readonly (readonly CellValue[])[]): Cell[] {
  const note = rows.findIndex((row) => isLiveNote(row[AT.name]));
  if (note < 0) return [];
  const cells: Cell[] = [];
  for (const [row, values] of rows.entries()) {
    const kind = kindOfKey(values[AT.key]);
    for (const column of (kind && PLANNED[kind]) ?? []) {
      const value = values[column];
      if (typeof value === "number") cells.push({ row, column, content: { number: value } });
      else if (typeof value === "string") cells.push({ row, column, content: { text: value } });
      else if (kind && isRemark(kind, column) && !value) cells.push({ row, column, content: { text: "" } });
      else throw new Error(`Row ${row + 1} shows no number to keep. Fix it, then turn the sheet into plain numbers.`);
    }
  }
  // Last, so that a sheet that was turned only in part does not say it is.
  cells.push({ row: note, column: AT.name, content: { text: FROZEN_NOTE } });
  return cells;
}
