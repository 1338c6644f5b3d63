/** What Univer's engine worked out and keeps outside of the workbook data. */

import type { ICellData, Injector, IRange, Workbook } from "@univerjs/core";
import { FormulaDataModel } from "@univerjs/engine-formula";
import type { WorkedOut } from "./fromUniver";

type Matrix<T> = Record<number, Record<number, T | null>>;

/** Of an open workbook whose formulas have all been worked out. Not a copy, so only to be read. */
export function workedOut(injector: Injector, workbook: Workbook): WorkedOut {
  const model = injector.get(FormulaDataModel);
  const unitId = workbook.getUnitId();
  return {
    filled: (model.getArrayFormulaCellData()[unitId] ?? {}) as Record<string, Matrix<ICellData>>,
    covered: (model.getArrayFormulaRange()[unitId] ?? {}) as Record<string, Matrix<IRange>>,
    shared: sharedFormulas(model, workbook),
    active: workbook.getActiveSheet(true)?.getSheetId() ?? "",
  };
}

function sharedFormulas(model: FormulaDataModel, workbook: Workbook): Record<string, Matrix<string>> {
  const all: Record<string, Matrix<string>> = {};
  for (const sheet of workbook.getSheets()) {
    const rows: Matrix<string> = {};
    sheet.getCellMatrix().forValue((row, column, cell) => {
      if (!cell?.si || cell.f) return;
      const formula = model.getFormulaStringByCell(row, column, sheet.getSheetId(), workbook.getUnitId());
      if (!formula) return;
      rows[row] ??= {};
      (rows[row] as Record<number, string>)[column] = formula;
    });
    if (Object.keys(rows).length > 0) all[sheet.getSheetId()] = rows;
  }
  return all;
}
