/** Formulas that the sheet here cannot work out: what they were in the file is better than an error. */

import type { Book, BookCell, BookSheet, Remark } from "../../../file/book";
import type { CellValue } from "../../../sheet/sheet";

const isError = (value: CellValue | undefined): value is { readonly error: string } =>
  typeof value === "object" && value !== null;

/** What the engine says of a function or a name that it does not know. */
const isUnknown = (value: CellValue) => isError(value) && (value.error === "#NAME?" || value.error === "#ERROR!");

/** `E4#`, all that the formula in E4 fills, which the engine does not follow. */
const WHOLE_SPILL = /[A-Z]\$?\d+#/i;

const isBeyondUs = ({ formula = "", value }: BookCell) =>
  isUnknown(value) || (isError(value) && WHOLE_SPILL.test(formula.replace(/"[^"]*"/g, "")));

/**
 * The workbook with the values of the file where an unchanged formula has something that is not known here, and what
 * to say about it: such a value may be older than what it depends on.
 */
export function notWorkedOut(now: Book, openedAs: Book | null): { book: Book; remarks: Remark[] } {
  if (!openedAs) return { book: now, remarks: [] };
  const remarks: Remark[] = [];
  const sheets = now.sheets.map((sheet) => {
    const before = openedAs.sheets.find(({ id }) => id === sheet.id);
    const known = before && valuesByFormula(before);
    if (!known || known.size === 0) return sheet;
    let count = 0;
    const mend = (cell: BookCell, row: number): BookCell => {
      if (cell.formula === undefined || !isBeyondUs(cell)) return cell;
      const values = known.get(cell.formula);
      const value = values?.get(`${row},${cell.column}`);
      if (value === undefined || isError(value)) return cell;
      count++;
      return { ...cell, value };
    };
    const rows = sheet.rows.map((row) => ({ ...row, cells: row.cells.map((cell) => mend(cell, row.row)) }));
    if (count === 0) return sheet;
    remarks.push({
      sheet: sheet.name,
      what:
        count === 1 ? "1 formula that cannot be worked out here" : `${count} formulas that cannot be worked out here`,
      consequence:
        "The file gets the values that they had in it, which may be out of date; Excel works them out again when it opens the file.",
    });
    return { ...sheet, rows };
  });
  return { book: remarks.length > 0 ? { ...now, sheets } : now, remarks };
}

/** The values of formulas by the formula and the cell. */
function valuesByFormula({ rows }: BookSheet): Map<string, Map<string, CellValue>> {
  const found = new Map<string, Map<string, CellValue>>();
  for (const { row, cells } of rows) {
    for (const { formula, column, value } of cells) {
      if (formula === undefined || isError(value)) continue;
      const values = found.get(formula) ?? new Map<string, CellValue>();
      found.set(formula, values.set(`${row},${column}`, value));
    }
  }
  return found;
}
