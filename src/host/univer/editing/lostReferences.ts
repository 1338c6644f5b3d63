/** What formulas read of a sheet or a table is `#REF!` once that is removed, as in Excel. */

import { type ICellData, type Injector, IUniverInstanceService, type Workbook, type Worksheet } from "@univerjs/core";
import { FormulaDataModel, IDefinedNamesService, SetDefinedNameMutation } from "@univerjs/engine-formula";
import { RemoveSheetMutation } from "@univerjs/preset-sheets-core";
import { AddSheetTableMutation, DeleteSheetTableMutation } from "@univerjs/preset-sheets-table";
import { type Gone, withLost } from "../../../file/formula/lost";
import { changedRules } from "./changedRules";
import { type Consequence, type Edit, joined } from "./edits";
import { written } from "./newRows";

/** Univer does so only for plain references to a removed sheet, and for tables only where columns or they are removed. */
export function loseReferences(injector: Injector, edit: Edit): Consequence | null {
  const gone = goneBy(edit);
  const workbook = injector.get(IUniverInstanceService).getUnit<Workbook>(edit.unitID);
  if (!workbook || gone.sheets.length + gone.tables.length === 0) return null;
  const change = (formula: string) => withLost(formula, gone);
  return joined(
    ...workbook.getSheets().map((sheet) => changedCells(injector, sheet, change)),
    changedNames(injector, edit.unitID, change),
    changedRules(injector, edit.unitID, change),
  );
}

/** The sheets and tables that an edit removed. Of a table only the way back says the name. */
function goneBy({ redoMutations, undoMutations }: Edit): Gone {
  const named = undoMutations.filter(({ id }) => id === AddSheetTableMutation.id).map(({ params }) => params as Table);
  const removed = redoMutations.filter(({ id }) => id === DeleteSheetTableMutation.id);
  return {
    sheets: redoMutations.flatMap(({ id, params }) =>
      id === RemoveSheetMutation.id ? (params as { subUnitName: string }).subUnitName : [],
    ),
    tables: removed.flatMap(
      ({ params }) => named.find(({ tableId }) => tableId === (params as Table).tableId)?.name ?? [],
    ),
  };
}

interface Table {
  readonly tableId: string;
  readonly name: string;
}

function changedCells(injector: Injector, sheet: Worksheet, change: (formula: string) => string): Consequence {
  const formulas = injector.get(FormulaDataModel);
  const value: Record<number, Record<number, ICellData>> = {};
  sheet.getCellMatrix().forValue((row, column, cell) => {
    if (!cell?.f && !cell?.si) return;
    // Of formulas that several cells share each becomes one of its own: all of them read what is gone.
    const formula = formulas.getFormulaStringByCell(row, column, sheet.getSheetId(), sheet.getUnitId()) ?? "";
    const f = change(formula);
    if (f !== formula) value[row] = { ...value[row], [column]: { f, si: null } };
  });
  return written(injector, sheet, value);
}

function changedNames(injector: Injector, unitId: string, change: (formula: string) => string): Consequence {
  const names = Object.values(injector.get(IDefinedNamesService).getDefinedNameMap(unitId) ?? {}).flatMap((name) => {
    const formulaOrRefString = change(name.formulaOrRefString);
    return formulaOrRefString === name.formulaOrRefString ? [] : [{ was: name, now: { ...name, formulaOrRefString } }];
  });
  const set = (name: object) => ({ id: SetDefinedNameMutation.id, params: { unitId, ...name } });
  return { redos: names.map(({ now }) => set(now)), undos: names.map(({ was }) => set(was)) };
}
