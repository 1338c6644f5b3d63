/** Rows of totals: what looks like one, and the mark of those that a file's tables end with. */

import type { ICellData, IRowData, IWorkbookData, IWorksheetData } from "@univerjs/core";
import { isFilled } from "./editing/edits";
import { RESOURCES, TOTALS } from "./file/codes";
import { resource } from "./file/resources";
import type { TablesJson } from "./file/tableResource";

const TOTAL = /^(grand |sub-?)?(totals?|sums?)\b/i;

/** A sum below a table is no row of it, and neither is the line that says so. */
export function areTotals(cells: readonly ICellData[]): boolean {
  const filled = cells.filter(isFilled);
  return filled.every(({ f }) => Boolean(f)) || filled.some(({ v }) => typeof v === "string" && TOTAL.test(v.trim()));
}

/**
 * A workbook whose tables have their rows of totals marked. One that was kept before these were marked has none on a
 * sheet: what stands below such a table and looks like totals is its row.
 */
export function withTotalsMarked(data: IWorkbookData): IWorkbookData {
  const sheets = { ...data.sheets };
  for (const [id, { tables = [] }] of Object.entries(resource<TablesJson>(data, RESOURCES.tables))) {
    const sheet = sheets[id];
    if (!sheet || Object.values(sheet.rowData ?? {}).some((row) => row?.custom?.[TOTALS])) continue;
    const rows = tables
      .filter(({ meta }) => meta?.totals === true)
      .flatMap(({ range }) => {
        const row = range.endRow + 1;
        const cells = Object.entries(sheet.cellData?.[row] ?? {})
          .filter(([column]) => Number(column) >= range.startColumn && Number(column) <= range.endColumn)
          .flatMap(([, cell]) => (isFilled(cell) ? [cell as ICellData] : []));
        return cells.length > 0 && areTotals(cells) ? [row] : [];
      });
    if (rows.length > 0) sheets[id] = { ...sheet, rowData: { ...sheet.rowData, ...marked(sheet, rows) } };
  }
  return { ...data, sheets };
}

const marked = (sheet: Partial<IWorksheetData>, rows: readonly number[]): Record<number, Partial<IRowData>> =>
  Object.fromEntries(
    rows.map((row) => [row, { ...sheet.rowData?.[row], custom: { ...sheet.rowData?.[row]?.custom, [TOTALS]: true } }]),
  );
