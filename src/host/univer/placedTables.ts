import { type Injector, IUniverInstanceService, type Workbook, type Worksheet } from "@univerjs/core";
import { TableManager } from "@univerjs/preset-sheets-table";
import { headingText, reader } from "../../engine/cells";
import type { PlacedTable } from "../../engine/references";
import type { HasTotals } from "../../engine/tableParts";
import { TOTALS } from "./file/codes";

/** Whether a row of totals stands below a table of a file, which itself ends above it: others may have come between. */
export const hasTotals = (table: ReturnType<TableManager["getTableById"]>, sheet: Worksheet): boolean =>
  table?.getTableMeta()?.totals === true && isTotalsRow(sheet, table.getRange().endRow + 1);

/** Whether a row is one of totals of a file. */
export const isTotalsRow = (sheet: Worksheet, row: number): boolean =>
  sheet.getRowManager().getRow(row)?.custom?.[TOTALS] === true;

/** Whether a row of totals stands below a table, which is asked for by its name as Univer has it. */
export function totalsOf(injector: Injector): HasTotals {
  return (unitId, name) => {
    const tables = injector.get(TableManager);
    const id = tables.getTableList(unitId).find((one) => one.name === name)?.id;
    const table = id === undefined ? undefined : tables.getTableById(unitId, id);
    const workbook = injector.get(IUniverInstanceService).getUnit<Workbook>(unitId);
    const sheet = table && workbook?.getSheetBySheetId(table.getSubunitId());
    return sheet && table.getTableMeta()?.totals === true ? hasTotals(table, sheet) : undefined;
  };
}

/** The tables of an open workbook. */
export function placedTables(injector: Injector, workbook: Workbook): PlacedTable[] {
  return injector
    .get(TableManager)
    .getTableList(workbook.getUnitId())
    .flatMap(({ id, name, subUnitId, range, columns }) => {
      const sheet = workbook.getSheetBySheetId(subUnitId);
      if (!sheet) return [];
      const read = reader(injector, sheet);
      const known = columns.map(({ displayName }) => displayName);
      return {
        name,
        sheet: sheet.getName(),
        row: range.startRow,
        column: range.startColumn,
        headings: known.map((heading, i) => headingText(read(range.startRow, range.startColumn + i)) || heading),
        known,
        rows: range.endRow - range.startRow,
        hasTotals: hasTotals(injector.get(TableManager).getTableById(workbook.getUnitId(), id), sheet),
      };
    });
}
