import { type ICellData, ICommandService, type Injector, ObjectMatrix, type Worksheet } from "@univerjs/core";
import { FormulaDataModel, LexerTreeBuilder } from "@univerjs/engine-formula";
import { SetRangeValuesCommand } from "@univerjs/preset-sheets-core";
import { SetSheetTableCommand, TableManager } from "@univerjs/preset-sheets-table";
import { reader } from "../../engine/cells";
import type { Place } from "../host";
import { BY_PANE } from "./editing/edits";
import { refuseReadOnly } from "./readOnly";

/** Runs a command of Univer's; rejects when it is refused. */
export async function command(injector: Injector, id: string, params: object): Promise<void> {
  if ("unitId" in params) refuseReadOnly(injector, String(params.unitId));
  if (!(await injector.get(ICommandService).executeCommand(id, params))) throw new Error(`${id} failed.`);
}

/** Puts contents into cells of a sheet, as the pane does; an undo takes them back in one step. */
export async function putCells(
  injector: Injector,
  sheet: Worksheet,
  value: Record<number, Record<number, ICellData>>,
): Promise<void> {
  await command(injector, SetRangeValuesCommand.id, {
    unitId: sheet.getUnitId(),
    subUnitId: sheet.getSheetId(),
    value,
    // Without one it asks for a selection, which a sheet need not have.
    range: new ObjectMatrix(value).getStartEndScope(),
    redoUndoId: BY_PANE,
  });
}

/** Lets a table end so many rows further down. */
async function growTable(injector: Injector, unitId: string, name: string, rows: number): Promise<void> {
  const table = injector
    .get(TableManager)
    .getTableList(unitId)
    .find((one) => one.name === name);
  if (!table) throw new Error(`The table "${name}" is not there any more.`);
  const { startRow, startColumn, endColumn, endRow } = table.range;
  await command(injector, SetSheetTableCommand.id, {
    unitId,
    tableId: table.id,
    updateRange: { newRange: { startRow, startColumn, endColumn, endRow: endRow + rows } },
  });
}

/** Lets a table grow over rows that stand right below it, and gives their blank cells the formulas of its last row. */
export async function takeInRows(
  injector: Injector,
  sheet: Worksheet,
  { name, place }: { readonly name: string; readonly place: Place },
  rows: number,
): Promise<void> {
  const ids = { unitId: sheet.getUnitId(), subUnitId: sheet.getSheetId() };
  const read = reader(injector, sheet);
  const formulas = injector.get(FormulaDataModel);
  const last = place.row + place.rows - 1;
  const value: Record<number, Record<number, ICellData>> = {};
  for (let column = place.column; column < place.column + place.columns; column++) {
    const formula = formulas.getFormulaStringByCell(last, column, ids.subUnitId, ids.unitId);
    if (!formula) continue;
    for (let down = 1; down <= rows; down++) {
      if (read(last + down, column) !== null) continue;
      const f = injector.get(LexerTreeBuilder).moveFormulaRefOffset(formula, 0, down);
      value[last + down] = { ...value[last + down], [column]: { f } };
    }
  }
  await growTable(injector, ids.unitId, name, rows);
  try {
    await putCells(injector, sheet, value);
  } catch (fault) {
    await growTable(injector, ids.unitId, name, -rows);
    throw fault;
  }
}
