/**
 * What the formulas of a workbook are known to give: with it, it is seen computed as soon as it is drawn. They are
 * worked out all the same, right after.
 */

import {
  CellValueType,
  type ICellData,
  type Injector,
  type IRange,
  type IWorkbookData,
  type Workbook,
} from "@univerjs/core";
import { FormulaDataModel } from "@univerjs/engine-formula";
import type { KnownValue, KnownValues } from "../../sheet/knownValues";

type Matrix<T> = Record<number, Record<number, T>>;

/** The workbook with these values in its formulas' cells. */
export function withValues(workbook: IWorkbookData, known: KnownValues): IWorkbookData {
  const sheets = Object.entries(workbook.sheets).map(([id, sheet]) => {
    const cellData: Matrix<ICellData> = { ...(sheet.cellData as Matrix<ICellData>) };
    for (const { row, column, value } of known[sheet.name ?? ""] ?? []) {
      const cell = cellData[row]?.[column];
      if (cell?.f) cellData[row] = { ...cellData[row], [column]: { ...cell, ...cellValue(value) } };
    }
    return [id, { ...sheet, cellData }];
  });
  return { ...workbook, sheets: Object.fromEntries(sheets) };
}

/** Shows these values in the cells of an open workbook that formulas fill beside their own. */
export function fillCells(injector: Injector, workbook: Workbook, known: KnownValues): void {
  const covered: Record<string, Matrix<IRange>> = {};
  const filled: Record<string, Matrix<ICellData>> = {};
  for (const sheet of workbook.getSheets()) {
    const values = known[sheet.getName()] ?? [];
    const ranges: Matrix<IRange> = {};
    const cells: Matrix<ICellData> = {};
    for (const { row, column, fills } of values) {
      if (!fills) continue;
      const range = {
        startRow: row,
        startColumn: column,
        endRow: row + fills.rows - 1,
        endColumn: column + fills.columns - 1,
      };
      put(ranges, row, column, range);
      for (const one of values) if (isIn(range, one)) put(cells, one.row, one.column, cellValue(one.value));
    }
    covered[sheet.getSheetId()] = ranges;
    filled[sheet.getSheetId()] = cells;
  }
  const model = injector.get(FormulaDataModel);
  model.setArrayFormulaRange({ [workbook.getUnitId()]: covered });
  model.setArrayFormulaCellData({ [workbook.getUnitId()]: filled });
}

function cellValue(value: KnownValue["value"]): ICellData {
  if (typeof value === "number") return { v: value, t: CellValueType.NUMBER };
  if (typeof value === "boolean") return { v: value ? 1 : 0, t: CellValueType.BOOLEAN };
  return { v: value, t: CellValueType.STRING };
}

const isIn = ({ startRow, endRow, startColumn, endColumn }: IRange, { row, column }: KnownValue) =>
  row >= startRow && row <= endRow && column >= startColumn && column <= endColumn;

function put<T>(matrix: Matrix<T>, row: number, column: number, one: T): void {
  matrix[row] = { ...matrix[row], [column]: one };
}
