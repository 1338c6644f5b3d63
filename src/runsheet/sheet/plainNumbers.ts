import type { Cell, CellValue, Content } from "../../sheet/sheet";
import { CHECK_HEAVY, CHECK_LIGHT, FIX, labelFormula } from "./inputChecks";
import {
  AT,
  type Columns,
  columnsOn,
  divisionLabel,
  isLiveNote,
  kindOfKey,
  PLAIN_MARK,
  PLAIN_NOTE,
  type RowKind,
  scaleOn,
  WIDTHS,
} from "./layout";

/** Columns that hold planned figures, by what a row holds. */
const planned = (at: Columns): Readonly<Partial<Record<RowKind, readonly number[]>>> => {
  const totals = [at.candles, at.pots, at.wax, at.scent, at.melted];
  return {
    lack: [at.missing],
    wax: [at.planned],
    scent: [at.planned],
    additive: [at.planned],
    melted: [at.planned],
    loads: [at.share],
    load: [at.share],
    vessel: [at.fillShown],
    scents: totals,
    totals,
    others: [at.melted],
    cure: [at.until],
  };
};

/** Columns of words that stand beside a figure only where there is something to say, and stay as they are. */
const remarks = (at: Columns): Readonly<Partial<Record<RowKind, number>>> => ({
  head: at.name,
  melted: at.potRemark,
  loads: at.plannedRemark,
  load: at.plannedRemark,
  scents: at.remark,
  // On a sheet that was written before, the third column.
  cure: at.until + 1,
});

/** Columns that say what to fix in what is typed into a row. */
const fixes = (at: Columns): Readonly<Partial<Record<RowKind, number>>> => ({
  head: at.name,
  wax: at.remark,
  scent: at.remark,
  additive: at.remark,
  vessel: at.label,
  scents: at.remark,
  cure: at.until + 1,
});

/**
 * The cells that turn a live run sheet into one of plain numbers: each planned figure as the number it shows now, and
 * the line that says which of the two it is. What follows what is written after the pour stays a formula, the net
 * weight to declare among it. Empty when the sheet is not live.
 * @param rows the cells of the sheet from A1 on
 */
export function plainNumbers(rows: readonly (readonly CellValue[])[]): Cell[] {
  const note = rows.findIndex((row) => isLiveNote(row[AT.name]));
  if (note < 0) return [];
  const at = columnsOn(rows);
  refuseWhatIsToFix(rows, at);
  const unit = scaleOn(rows)?.unit;
  if (unit === undefined) throw new Error(`The sheet does not say its unit any more: write "${divisionLabel("g")}".`);
  const cells: Cell[] = [];
  for (const [row, values] of rows.entries()) {
    const kind = kindOfKey(values[at.key]);
    if (!kind) continue;
    const keep = (column: number, content: Content) => cells.push({ row, column, content });
    for (const column of planned(at)[kind] ?? []) keep(column, { number: numberAt(values, column, row) });
    if (kind === "mark") keep(at.mark, { text: PLAIN_MARK });
    // Of these not every row has one. In the list of what to fetch they stood in other columns before.
    const some = kind === "thing" ? WIDTHS.keys() : kind === "scents" ? [at.until] : [];
    for (const column of some) {
      if (!isWritten(values[column])) keep(column, { number: numberAt(values, column, row) });
    }
    const remark = remarks(at)[kind];
    if (remark !== undefined) keep(remark, { text: textAt(values, remark, row) });
    if (kind === "vessel") {
      const [fill, each] = [numberAt(values, at.fill, row), numberAt(values, at.fillShown, row)];
      const label = textAt(values, at.label, row).startsWith("Net Wt") ? "us" : "metric";
      // On sheets that were written before, the weight of all of them stands there; of none of them it is 0.
      const planned = each > 0 ? Math.min(fill, each) : fill;
      keep(at.label, { formula: labelFormula(row + 1, { unit, label }, planned) });
    }
  }
  // Last, so that a sheet that was turned only in part does not say it is.
  cells.push({ row: note, column: AT.name, content: { text: PLAIN_NOTE } });
  return cells;
}

/** Words, a tick and nothing are no figures of the plan. */
const isWritten = (value: CellValue | undefined): boolean => ["string", "boolean"].includes(typeof (value ?? ""));

function refuseWhatIsToFix(rows: readonly (readonly CellValue[])[], at: Columns): void {
  for (const [row, values] of rows.entries()) {
    const kind = kindOfKey(values[at.key]);
    const remark = kind && values[fixes(at)[kind] ?? -1];
    if (typeof remark === "string" && (remark.startsWith(FIX) || [CHECK_HEAVY, CHECK_LIGHT].includes(remark))) {
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
