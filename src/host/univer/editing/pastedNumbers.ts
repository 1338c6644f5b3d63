/** What is pasted from outside and may be doubted: marked on its way through Univer, which would read it unseen. */

import {
  CellValueType,
  getNumfmtParseValueFilter,
  type ICellData,
  type Injector,
  isTextFormat,
  type Worksheet,
} from "@univerjs/core";
import { getPatternType } from "@univerjs/preset-sheets-core";
import { cellName } from "../../../engine/problems";
import { type Consequence, cellsOf, type Edit } from "./edits";
import { written } from "./newRows";
import { type Doubt, hasDecimalComma, pastedReading, percentReading, type Reading, staysText } from "./typedReadings";

/** Unicode sets it aside for use inside of a program: no text has it, and nothing reads a number behind it. */
const MARK = "\uFDD0";

/** Says of a cell that was pasted into with which number format it showed percent; null where it did not. */
export type PercentAt = (row: number, column: number) => string | null;

/** A single text that is pasted, marked where it is to be read here. */
export const markedText = (text: string): string => (pastedReading(text, false) ? MARK + text.trim() : text);

/**
 * Cells that are pasted, those marked that are to be read here: also what begins with `=` among several, and texts
 * that have no number format of their own, where they bring one.
 */
export function markedCells(html: string, areTexts: boolean): string {
  const page = new DOMParser().parseFromString(html, "text/html");
  const cells = [...page.querySelectorAll("td, th")].map((cell) => ({ cell, text: cell.textContent.trim() }));
  const amongCommas = cells.some(({ text }) => hasDecimalComma(text));
  const isAlone = cells.filter(({ text }) => text).length < 2;
  const read = cells.filter(
    ({ text }) =>
      (!isAlone && isFormula(text)) ||
      pastedReading(text, amongCommas) ||
      (areTexts && getNumfmtParseValueFilter(text)?.z),
  );
  for (const { cell, text } of read) cell.textContent = MARK + text;
  return read.length === 0 ? html : page.documentElement.outerHTML;
}

const isFormula = (text: string): boolean => text.length > 1 && text.startsWith("=");

export interface Pasted {
  /** What to write into the cells. */
  readonly done: Consequence;
  /** What of it may be doubted. */
  readonly doubts: readonly Doubt[];
  /** How many texts begin with `=`. */
  readonly formulas: number;
}

/** Reads the cells that an edit pasted into a sheet: those marked, and plain numbers among percentages. */
export function readPasted(injector: Injector, edit: Edit, sheet: Worksheet, percentAt: PercentAt): Pasted {
  const cells = [...cellsOf(edit.redoMutations, sheet.getSheetId())].flatMap(([row, line]) =>
    [...line].map(([column, cell]) => ({ row, column, cell, marked: markedIn(cell) })),
  );
  const amongCommas = cells.some(({ marked }) => marked !== null && hasDecimalComma(marked));
  const value: Record<number, Record<number, ICellData>> = {};
  const doubts: Doubt[] = [];
  let formulas = 0;
  for (const { row, column, cell, marked } of cells) {
    const look = sheet.getComposedCellStyle(row, column)?.n?.pattern;
    const percent = percentAt(row, column);
    const text = marked ?? (percent === null ? null : numberIn(cell, sheet, row, column));
    if (text === null) continue;
    const isText = isTextFormat(look) || isFormula(text);
    if (isFormula(text)) formulas++;
    const readingHere = percent === null ? pastedReading : percentReading;
    const reading = isText ? null : readingHere(text, amongCommas);
    if (marked === null && !reading) continue;
    value[row] = { ...value[row], [column]: cellOf(text, isText, reading, percent ?? look) };
    if (reading) doubts.push({ cell: cellName({ row, column }), text, reading });
  }
  return { done: written(injector, sheet, value), doubts, formulas };
}

const markedIn = ({ v }: ICellData): string | null =>
  typeof v === "string" && v.startsWith(MARK) ? v.slice(MARK.length) : null;

/** The plain number that was pasted into a cell; null where none was, or one that is a percentage, money or a day. */
function numberIn(pasted: ICellData, sheet: Worksheet, row: number, column: number): string | null {
  const look = typeof pasted.s === "object" ? pasted.s?.n?.pattern : undefined;
  if (pasted.f || (look && !/^(general|number|grouped)$/.test(getPatternType(look)))) return null;
  const { v, t } = sheet.getCellRaw(row, column) ?? {};
  return t === CellValueType.NUMBER && typeof v === "number" ? String(v) : null;
}

/** @param look the number format of the cell, which stays where it is one of the same kind */
function cellOf(text: string, isText: boolean, reading: Reading | null, look: string | undefined): ICellData {
  const isRead = !isText && !(reading && staysText(reading));
  const read = isRead ? getNumfmtParseValueFilter(reading?.entry ?? text) : null;
  const plain = { p: null, f: null, si: null };
  if (typeof read?.v !== "number") {
    return { ...plain, v: text, t: isFormula(text) ? CellValueType.FORCE_STRING : CellValueType.STRING };
  }
  const isSame = look && (!read.z || getPatternType(look) === getPatternType(read.z));
  const pattern = isSame ? look : read.z;
  return { ...plain, v: read.v, t: CellValueType.NUMBER, ...(pattern && { s: { n: { pattern } } }) };
}
