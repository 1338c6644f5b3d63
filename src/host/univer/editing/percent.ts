/** A number typed into a cell that shows percent is a percentage. */

import { CellValueType, type ICellData, type Injector, type Worksheet } from "@univerjs/core";
import { AFTER_CELL_EDIT, SheetInterceptorService } from "@univerjs/preset-sheets-core";
import { TableManager } from "@univerjs/preset-sheets-table";

/** A comma is a decimal one unless it can stand between thousands. */
export const DECIMAL_COMMA = /^[+-]?(0*,\d+|\d+,(\d{1,2}|\d{4,})|\d{4,},\d+)$/;

/** One that can, but may have been meant as a decimal one: 6,500. */
export const DOUBTFUL_COMMA = /^[+-]?\d{1,3},\d{3}$/;

/** A number with the real minus sign of Unicode, which the spreadsheet does not read, has that of the keyboard then. */
export const plainMinus = (text: string): string => text.replace(/^([€$£¥]?\s*)\u2212(?=[\d.,€$£¥])/, "$1-");

/**
 * A typed number of 1 or more is so many percent: nobody pours 600 % of scent. A smaller one is the share it has always
 * been here, 0.06 for 6 % as the help and the error messages say, and as Excel's own help says of such cells; since
 * `0.5` may have been meant as half a percent, it is said how it was taken.
 */
export function percentOf(typed: string): { readonly entry: string; readonly doubt: string } | null {
  const trimmed = typed.trim();
  const signed = plainMinus(trimmed);
  const text = DECIMAL_COMMA.test(signed) ? signed.replace(",", ".") : signed;
  if (!/^[+-]?(\d{1,3}(,\d{3})+|\d*)(\.\d*)?$/.test(text) || !/\d/.test(text)) return null;
  const plain = text.replaceAll(",", "");
  const number = Number(plain);
  if (number === 0) return { entry: "0", doubt: "" };
  if (Math.abs(number) >= 1) {
    const smaller = Number(text.replace(",", "."));
    const doubt = `${trimmed} was taken as ${number} %. If you mean ${smaller} %, type ${smaller}%.`;
    return { entry: `${plain}%`, doubt: DOUBTFUL_COMMA.test(text) ? doubt : "" };
  }
  const percent = Number((number * 100).toPrecision(12));
  return {
    entry: String(number),
    doubt: `${trimmed} was taken as ${percent} %. If you mean ${number} %, type ${number}%.`,
  };
}

/** Reads what users type; formulas and texts stay as they are. */
export function readPercent(injector: Injector, say: (words: string) => void): void {
  const interceptors = injector.get(SheetInterceptorService);
  interceptors.writeCellInterceptor.intercept(AFTER_CELL_EDIT, {
    // Before the number format reads what was typed.
    priority: 1000,
    handler: (cell, context, next) => {
      say("");
      if (
        !cell ||
        cell.f ||
        cell.p ||
        cell.t === CellValueType.FORCE_STRING ||
        cell.v === null ||
        cell.v === undefined
      ) {
        return next(cell);
      }
      const { worksheet, row, col } = context;
      const isPercent = percentFormat(injector, worksheet, row, col) !== null;
      const read = isPercent ? percentOf(String(cell.v)) : null;
      if (!read) return next(cell);
      if (read.doubt) say(read.doubt);
      const { t: _, ...rest } = cell;
      return next({ ...rest, v: read.entry } as ICellData);
    },
  });
}

/**
 * The number format of a cell that shows percent; null where it does not. One without any takes the look of the table
 * that ends right above it, or above the first of the rows that are filled together with it.
 */
export function percentFormat(
  injector: Injector,
  sheet: Worksheet,
  row: number,
  column: number,
  firstRow = row,
): string | null {
  const own = sheet.getComposedCellStyle(row, column)?.n;
  if (own) return showsPercent(own.pattern) ? own.pattern : null;
  const above = injector
    .get(TableManager)
    .getTablesBySubunitId(sheet.getUnitId(), sheet.getSheetId())
    .map((one) => one.getRange())
    .find(
      ({ endRow, startColumn, endColumn }) =>
        endRow < row && endRow >= firstRow - 1 && startColumn <= column && endColumn >= column,
    );
  const pattern = above && sheet.getComposedCellStyle(above.endRow, column)?.n?.pattern;
  return pattern && showsPercent(pattern) ? pattern : null;
}

const showsPercent = (pattern: string): boolean => pattern.replace(/"[^"]*"|\\./g, "").includes("%");
