import type { Cell, CellValue, Content } from "../../sheet/sheet";
import { CHECK_WEIGHT, FIX, labelFormula } from "./inputChecks";
import { AT, divisionLabel, isLiveNote, kindOfKey, PLAIN_NOTE, type RowKind, scaleOn } from "./layout";

/** Columns that hold planned figures, by what a row holds. */
const PLANNED: Readonly<Partial<Record<RowKind, readonly number[]>>> = {
  wax: [AT.planned],
  scent: [AT.planned],
  additive: [AT.planned],
  melted: [AT.planned],
  load: [AT.share],
  vessel: [AT.fillShown],
  totals: [AT.candles, AT.pots, AT.wax, AT.scent, AT.melted],
  others: [AT.melted],
  cure: [AT.until],
};

/** Columns of words that stand beside a figure only where there is something to say, and stay as they are. */
const REMARKS: Readonly<Partial<Record<RowKind, number>>> = {
  head: AT.name,
  melted: AT.potRemark,
  load: AT.loadRemark,
  cure: AT.cureRemark,
};

/** Columns that say what to fix in what is typed into a row. */
const FIXES: Readonly<Partial<Record<RowKind, number>>> = {
  head: AT.name,
  wax: AT.remark,
  scent: AT.remark,
  additive: AT.remark,
  vessel: AT.label,
  cure: AT.cureRemark,
};

/**
 * The cells that turn a live run sheet into one of plain numbers: each planned figure as the number it shows now, and
 * the line that says which of the two it is. What follows what is written after the pour stays a formula, the net
 * weight to declare among it. Empty when the sheet is not live.
 * @param rows the cells of the sheet from A1 on
 */
export function plainNumbers(rows: readonly (readonly CellValue[])[]): Cell[] {
  const note = rows.findIndex((row) => isLiveNote(row[AT.name]));
  if (note < 0) return [];
  refuseWhatIsToFix(rows);
  const unit = scaleOn(rows)?.unit;
  if (unit === undefined) throw new Error(`The sheet does not say its unit any more: write "${divisionLabel("g")}".`);
  const cells: Cell[] = [];
  for (const [row, values] of rows.entries()) {
    const kind = kindOfKey(values[AT.key]);
    if (!kind) continue;
    const keep = (column: number, content: Content) => cells.push({ row, column, content });
    for (const column of PLANNED[kind] ?? []) keep(column, { number: numberAt(values, column, row) });
    const remark = REMARKS[kind];
    if (remark !== undefined) keep(remark, { text: textAt(values, remark, row) });
    if (kind === "vessel") {
      const [fill, each] = [numberAt(values, AT.fill, row), numberAt(values, AT.fillShown, row)];
      const label = textAt(values, AT.label, row).startsWith("Net Wt") ? "us" : "metric";
      // On sheets that were written before, the weight of all of them stands there; of none of them it is 0.
      const planned = each > 0 ? Math.min(fill, each) : fill;
      keep(AT.label, { formula: labelFormula(row + 1, { unit, label }, planned) });
    }
  }
  // Last, so that a sheet that was turned only in part does not say it is.
  cells.push({ row: note, column: AT.name, content: { text: PLAIN_NOTE } });
  return cells;
}

function refuseWhatIsToFix(rows: readonly (readonly CellValue[])[]): void {
  for (const [row, values] of rows.entries()) {
    const kind = kindOfKey(values[AT.key]);
    const remark = kind && values[FIXES[kind] ?? -1];
    if (typeof remark === "string" && (remark.startsWith(FIX) || remark === CHECK_WEIGHT)) {
      throw new Error(`Row ${row + 1}: ${remark.trim().replace(/\.$/, "")}. Then turn the sheet into plain numbers.`);
    }
  }
}

function numberAt(values: readonly CellValue[], column: number, row: number): number {
  const value = values[column];
  if (typeof value === "number") return value;
  throw new Error(`Row ${row + 1} shows no number to keep. Fix it, then turn the sheet into plain numbers.`);
}

function textAt(values: readonly CellValue[], column: number, row: number): string {
  const value = values[column] ?? "";
  if (typeof value === "string") return value;
  throw new Error(`Row ${row + 1} does not say what it should. Fix it, then turn the sheet into plain numbers.`);
}
