import {
  BuildTextUtils,
  CellValueType,
  type ICellData,
  type Injector,
  type Nullable,
  type Worksheet,
} from "@univerjs/core";
import { ERROR_TYPE_SET, type ErrorType, FormulaDataModel } from "@univerjs/engine-formula";
import type { CellValue } from "../sheet/sheet";

/** An error value with what to fix, where the function said so. */
export interface ErrorValue {
  readonly error: string;
  readonly message: string;
}

/** What a cell holds, exact. A text that the user did not type as one is an error when it is an error's code. */
export function readCell(cell: Nullable<ICellData>): Exclude<CellValue, object> | ErrorValue {
  if (!cell) return null;
  if (cell.p?.body) return BuildTextUtils.transform.getPlainText(cell.p.body.dataStream).replaceAll("\r", "\n");
  const { v, t, custom } = cell;
  if (v === null || v === undefined || v === "") return null;
  if (t !== CellValueType.FORCE_STRING && ERROR_TYPE_SET.has(v as ErrorType)) {
    return { error: String(v), message: typeof custom?.message === "string" ? custom.message : "" };
  }
  if (t === CellValueType.BOOLEAN) return v === 1 || v === true || v === "1";
  if (t === CellValueType.STRING || t === CellValueType.FORCE_STRING) return String(v);
  return t === CellValueType.NUMBER ? Number(v) : v;
}

/** The cells that formulas spill into, which are not among the cells of the sheet. */
export function spilledCells(
  injector: Injector,
  sheet: Worksheet,
): Record<number, Record<number, Nullable<ICellData>>> {
  const ofWorkbook = injector.get(FormulaDataModel).getArrayFormulaCellData()[sheet.getUnitId()];
  return (ofWorkbook?.[sheet.getSheetId()] ?? {}) as Record<number, Record<number, Nullable<ICellData>>>;
}

/** Reads the cells of a sheet, those that formulas spill into included. */
export function reader(injector: Injector, sheet: Worksheet) {
  const own = sheet.getCellMatrix();
  const spilled = spilledCells(injector, sheet);
  return (row: number, column: number) => readCell(own.getValue(row, column)) ?? readCell(spilled[row]?.[column]);
}

/** A heading as text; nothing for a blank or an error. */
export const headingText = (value: CellValue) =>
  value === null || typeof value === "object" ? "" : String(value).trim();
