/** What is typed into any cell and would be read as something else than was meant, or as nothing. */

import { CellValueType, type Injector, isTextFormat } from "@univerjs/core";
import { AFTER_CELL_EDIT, SheetInterceptorService } from "@univerjs/preset-sheets-core";
import { readingOf, typedWords } from "./typedReadings";

/** Reads what users type and says how it was taken; formulas and texts stay as they are. */
export function readTyped(injector: Injector, say: (words: string) => void): void {
  injector.get(SheetInterceptorService).writeCellInterceptor.intercept(AFTER_CELL_EDIT, {
    // After the percentages are read, before the number format is.
    priority: 999,
    handler: (cell, { worksheet, row, col }, next) => {
      const isTyped = cell && !cell.f && !cell.p && cell.t !== CellValueType.FORCE_STRING;
      if (!isTyped || isTextFormat(worksheet.getComposedCellStyle(row, col)?.n?.pattern)) return next(cell);
      const typed = String(cell.v ?? "");
      const reading = readingOf(typed);
      if (!reading) return next(cell);
      const words = typedWords(typed, reading);
      if (words) say(words);
      const { t: _, ...rest } = cell;
      return next({ ...rest, v: reading.entry });
    },
  });
}
