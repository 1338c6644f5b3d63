import {
  type ICellData,
  ICommandService,
  type Injector,
  IUniverInstanceService,
  type Workbook,
  type Worksheet,
} from "@univerjs/core";
import { SetRangeValuesMutation } from "@univerjs/preset-sheets-core";
import { TableManager } from "@univerjs/preset-sheets-table";
import { headingText, reader } from "./cells";
import { TOTALS } from "./file/codes";
import { type PlacedTable, readableFormula } from "./references";

/** Lets users type table references as they do in Excel: each formula is made readable as it goes into its cell. */
export function readTypedFormulas(injector: Injector): void {
  injector.get(ICommandService).beforeCommandExecuted(({ id, params }, options) => {
    if (id !== SetRangeValuesMutation.id || options?.fromFormula) return;
    const { unitId, subUnitId, cellValue } = params as Change;
    const workbook = injector.get(IUniverInstanceService).getUnit<Workbook>(unitId);
    const sheet = workbook?.getSheetBySheetId(subUnitId)?.getName();
    if (!workbook || sheet === undefined) return;
    for (const [row, cells] of Object.entries(cellValue ?? {})) {
      for (const [column, cell] of Object.entries(cells)) {
        if (!cell?.f?.includes("[")) continue;
        const place = { sheet, row: Number(row), column: Number(column) };
        cell.f = readableFormula(cell.f, place, placedTables(injector, workbook));
      }
    }
  });
}

/** Whether a row of totals stands below a table of a file, which itself ends above it: others may have come between. */
export const hasTotals = (table: ReturnType<TableManager["getTableById"]>, sheet: Worksheet): boolean =>
  table?.getTableMeta()?.totals === true &&
  sheet.getRowManager().getRow(table.getRange().endRow + 1)?.custom?.[TOTALS] === true;

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

interface Change {
  readonly unitId: string;
  readonly subUnitId: string;
  readonly cellValue?: Record<number, Record<number, ICellData | null>>;
}
