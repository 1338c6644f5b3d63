/** What is typed into any cell and would be read as something else than was meant, or as nothing. */

import { CellValueType, getNumfmtParseValueFilter, type Injector, isTextFormat } from "@univerjs/core";
import { AFTER_CELL_EDIT, SheetInterceptorService } from "@univerjs/preset-sheets-core";
import { DECIMAL_COMMA, DOUBTFUL_COMMA } from "./percent";

const NUMBER = /^([€$£¥]?)\s*([+-]?[\d.,' \u00a0\u202f]*\d)\s*([€$£¥%]?)$/;

/** Groups of three digits that a comma does not part. */
const GROUPS = /^[+-]?\d{1,3}(?:([. \u00a0\u202f'])\d{3}(?:\1\d{3})*,\d+|(?:\.\d{3}){2,})$/;
const COMMA_GROUPS = /^[+-]?\d{1,3}(,\d{3})+(\.\d+)?$/;

const AS_TEXT = "If you mean a text, type ' in front of it.";

/** How something typed is taken. */
interface Reading {
  /** What to enter in its place. */
  readonly entry: string;
  readonly words: string;
}

/** Null where nothing needs to be said. */
export const readingOf = (typed: string): Reading | null => number(typed.trim()) ?? date(typed.trim());

function number(typed: string): Reading | null {
  const [, before = "", body = "", after = ""] = NUMBER.exec(typed) ?? [];
  const unit = before || after;
  const taken = (plain: string, more: string): Reading => ({
    entry: `${before}${plain}${after}`,
    words: `${typed} was taken as ${plain}${unit && ` ${unit}`}. ${more}`.trim(),
  });
  if (DECIMAL_COMMA.test(body)) return taken(body.replace(",", "."), unit ? "" : AS_TEXT);
  if (GROUPS.test(body)) return taken(body.replace(/[. \u00a0\u202f']/g, "").replace(",", "."), unit ? "" : AS_TEXT);
  if (DOUBTFUL_COMMA.test(body)) {
    const smaller = `${Number(body.replace(",", "."))}`;
    const { entry, words } = taken(body.replace(",", ""), `If you mean ${smaller}, type ${smaller}${after}.`);
    // The spreadsheet reads it so too, with its look.
    return { entry: after ? entry : typed, words };
  }
  // With a sign behind it the spreadsheet would take it for a text.
  if (after && COMMA_GROUPS.test(body)) return { entry: `${before}${body.replaceAll(",", "")}${after}`, words: "" };
  if (!unit && /^0\d{1,14}$/.test(body)) {
    return taken(String(Number(body)), "To keep the zeros in front, type ' in front of them.");
  }
  return null;
}

function date(typed: string): Reading | null {
  const [, first = "", second = "", year] = /^(\d{1,2})[/-](\d{1,2})(?:[/-](\d{4}))?$/.exec(typed) ?? [];
  const read = first ? getNumfmtParseValueFilter(typed) : null;
  if (typeof read?.v === "number") {
    // As Univer's numbers of days, from the last but one day of 1899 on.
    const day = new Date(Date.UTC(1899, 11, 30) + read.v * 86_400_000).toISOString().slice(0, 10);
    const taken = `${typed} was taken as the date ${day}.`;
    if (!year) return { entry: typed, words: `${taken} If you mean a calculation, type =${typed}. ${AS_TEXT}` };
    if (Number(first) === Number(second)) return null;
    const other = iso(year, second, first);
    return { entry: typed, words: `${taken} If the day stands first, type ${other}.` };
  }
  const other = year ? iso(year, second, first) : "";
  if (!other || Number.isNaN(Date.parse(other)) || !new Date(other).toISOString().startsWith(other)) return null;
  return { entry: other, words: `${typed} was taken as the date ${other}. ${AS_TEXT}` };
}

const iso = (year: string, month: string, day: string): string =>
  [year, month.padStart(2, "0"), day.padStart(2, "0")].join("-");

/** Reads what users type and says how it was taken; formulas, texts and what is pasted stay as they are. */
export function readTyped(injector: Injector, say: (words: string) => void): void {
  injector.get(SheetInterceptorService).writeCellInterceptor.intercept(AFTER_CELL_EDIT, {
    // After the percentages are read, before the number format is.
    priority: 999,
    handler: (cell, { worksheet, row, col }, next) => {
      const isTyped = cell && !cell.f && !cell.p && cell.t !== CellValueType.FORCE_STRING;
      if (!isTyped || isTextFormat(worksheet.getComposedCellStyle(row, col)?.n?.pattern)) return next(cell);
      const reading = readingOf(String(cell.v ?? ""));
      if (!reading) return next(cell);
      if (reading.words) say(reading.words);
      const { t: _, ...rest } = cell;
      return next({ ...rest, v: reading.entry });
    },
  });
}
