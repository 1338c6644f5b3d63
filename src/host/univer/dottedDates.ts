import { CellValueType, type Injector } from "@univerjs/core";
import { AFTER_CELL_EDIT, SheetInterceptorService } from "@univerjs/preset-sheets-core";

/** A date written with dots, as year, month and day: its day stands first wherever dates are written so. */
export function dottedDate(typed: string): string | null {
  const [, day = "", month = "", year = ""] = /^\s*(\d{1,2})\.(\d{1,2})\.(\d{4}|\d{2})\s*$/.exec(typed) ?? [];
  if (!year) return null;
  const iso = [year.padStart(4, "20"), month.padStart(2, "0"), day.padStart(2, "0")].join("-");
  const date = new Date(`${iso}T00:00:00Z`);
  return Number.isNaN(date.getTime()) || !date.toISOString().startsWith(iso) ? null : iso;
}

/** Univer would take the month to stand first, and a day after the 12th for a text. */
export function readDottedDates(injector: Injector): void {
  injector.get(SheetInterceptorService).writeCellInterceptor.intercept(AFTER_CELL_EDIT, {
    // Before the number format reads what was typed.
    priority: 1001,
    handler: (cell, _, next) => {
      const isTyped = cell && !cell.f && !cell.p && cell.t !== CellValueType.FORCE_STRING;
      const date = isTyped ? dottedDate(String(cell.v ?? "")) : null;
      if (!cell || date === null) return next(cell);
      const { t: _type, ...rest } = cell;
      return next({ ...rest, v: date });
    },
  });
}
