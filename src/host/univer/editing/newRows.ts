/** Rows that come to a table bring the formulas of its columns and look like its others. */

import { type ICellData, type Injector, IUniverInstanceService, type Workbook, type Worksheet } from "@univerjs/core";
import {
  InsertRowMutation,
  MoveRangeMutation,
  SetRangeValuesMutation,
  SetRangeValuesUndoMutationFactory,
} from "@univerjs/preset-sheets-core";
import { SetSheetTableMutation, TableManager } from "@univerjs/preset-sheets-table";
import { reader } from "../../../engine/cells";
import { columnFormula, type Rows } from "./columnFormulas";
import { type Consequence, type Edit, joined } from "./edits";

interface Box extends Rows {
  readonly startColumn: number;
  readonly endColumn: number;
}

type CellRows = Record<number, Record<number, ICellData>>;

/** Fills the rows that were inserted inside of tables; null where none were. */
export function fillInserted(injector: Injector, edit: Edit): Consequence | null {
  const workbook = injector.get(IUniverInstanceService).getUnit<Workbook>(edit.unitID);
  const grown = edit.redoMutations.filter(({ id }) => id === SetSheetTableMutation.id);
  let all: Consequence | null = null;
  for (const { params } of grown) {
    const { subUnitId, tableId } = params as { subUnitId: string; tableId: string };
    const sheet = workbook?.getSheetBySheetId(subUnitId);
    const range = injector.get(TableManager).getTable(edit.unitID, tableId)?.getRange();
    const rows = inserted(edit, subUnitId);
    if (!sheet || !range || !rows || rows.startRow <= range.startRow || rows.endRow > range.endRow) continue;
    const whole = { startRow: range.startRow + 1, endRow: range.endRow };
    all = joined(all, filledRows(injector, sheet, range, { ...range, ...rows }, whole));
  }
  return all;
}

/** The rows that an edit put in: whole ones, or those that a part of the sheet made room for by moving down. */
export function inserted({ redoMutations }: Edit, sheetId: string): Rows | null {
  for (const { id, params } of redoMutations) {
    if (id === InsertRowMutation.id) {
      const { subUnitId, range } = params as { subUnitId: string; range: Rows };
      if (subUnitId === sheetId) return { startRow: range.startRow, endRow: range.endRow };
    }
    if (id === MoveRangeMutation.id) {
      const { from, to } = params as Record<"from" | "to", { subUnitId: string; value: object }>;
      const [first, moved] = [from, to].map(({ value }) =>
        Object.keys(value).reduce((least, row) => Math.min(least, Number(row)), Number.POSITIVE_INFINITY),
      );
      if (to.subUnitId === sheetId && moved !== undefined && first !== undefined && moved > first) {
        return { startRow: first, endRow: moved - 1 };
      }
    }
  }
  return null;
}

/**
 * The blank cells of new rows with the formulas of their columns, and all of them with the look of the table's.
 * @param known the rows that say what the formulas are
 */
export function filledRows(injector: Injector, sheet: Worksheet, table: Box, rows: Box, known: Rows): Consequence {
  const read = reader(injector, sheet);
  const cells = sheet.getCellMatrix();
  const model = rows.endRow < known.endRow ? rows.endRow + 1 : rows.startRow - 1;
  const value: CellRows = {};
  for (let column = table.startColumn; column <= table.endColumn; column++) {
    const formula = columnFormula(injector, sheet, column, known);
    const look = model > table.startRow ? cells.getValue(model, column)?.s : undefined;
    for (let row = rows.startRow; row <= rows.endRow; row++) {
      const cell: ICellData = {};
      if (formula && read(row, column) === null) cell.f = formula(row);
      const own = cells.getValue(row, column)?.s;
      if (look && own !== look) cell.s = own ? { ...styleOf(sheet, look), ...styleOf(sheet, own) } : look;
      if (Object.keys(cell).length > 0) value[row] = { ...value[row], [column]: cell };
    }
  }
  return written(injector, sheet, value);
}

const styleOf = (sheet: Worksheet, style: NonNullable<ICellData["s"]>) =>
  typeof style === "string" ? sheet.getStyleDataByHash(style) : style;

/** Cells to write, and the way back; nothing where there are none. */
export function written(injector: Injector, sheet: Worksheet, cellValue: CellRows): Consequence {
  if (Object.keys(cellValue).length === 0) return { redos: [], undos: [] };
  const params = { unitId: sheet.getUnitId(), subUnitId: sheet.getSheetId(), cellValue };
  const undo = SetRangeValuesUndoMutationFactory(injector, params);
  return {
    redos: [{ id: SetRangeValuesMutation.id, params }],
    undos: [{ id: SetRangeValuesMutation.id, params: undo }],
  };
}
