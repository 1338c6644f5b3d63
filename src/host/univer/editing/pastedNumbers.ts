/** What is pasted from outside and may be doubted: marked on its way through Univer, which would read it unseen. */

import {
  CellValueType,
  getNumfmtParseValueFilter,
  type ICellData,
  type Injector,
  isTextFormat,
  type Worksheet,
} from "@univerjs/core";
import { cellName } from "../../../engine/problems";
import { type Consequence, cellsOf, type Edit } from "./edits";
import { written } from "./newRows";
import { type Doubt, hasDecimalComma, pastedReading, type Reading, staysText } from "./readings";

/** Unicode sets it aside for use inside of a program: no text has it, and nothing reads a number behind it. */
const MARK = "\uFDD0";

/** A single text that is pasted, marked where it is to be read here. */
export const markedText = (text: string): string => (pastedReading(text, false) ? MARK + text.trim() : text);

/** Cells that are pasted, those marked that are to be read here. */
export function markedCells(html: string): string {
  const page = new DOMParser().parseFromString(html, "text/html");
  const cells = [...page.querySelectorAll("td, th")].map((cell) => ({ cell, text: cell.textContent.trim() }));
  const amongCommas = cells.some(({ text }) => hasDecimalComma(text));
  const read = cells.filter(({ text }) => pastedReading(text, amongCommas));
  for (const { cell, text } of read) cell.textContent = MARK + text;
  return read.length === 0 ? html : page.documentElement.outerHTML;
}

/** Reads the marked cells of an edit in a sheet: what to write into them, and what of it may be doubted. */
export function readMarked(injector: Injector, edit: Edit, sheet: Worksheet): { done: Consequence; doubts: Doubt[] } {
  const marked = [...cellsOf(edit.redoMutations, sheet.getSheetId())].flatMap(([row, line]) =>
    [...line].flatMap(([column, { v }]) =>
      typeof v === "string" && v.startsWith(MARK) ? [{ row, column, text: v.slice(MARK.length) }] : [],
    ),
  );
  const amongCommas = marked.some(({ text }) => hasDecimalComma(text));
  const value: Record<number, Record<number, ICellData>> = {};
  const doubts: Doubt[] = [];
  for (const { row, column, text } of marked) {
    const isText = isTextFormat(sheet.getComposedCellStyle(row, column)?.n?.pattern);
    const reading = isText ? null : pastedReading(text, amongCommas);
    value[row] = { ...value[row], [column]: cellOf(text, reading) };
    if (reading) doubts.push({ cell: cellName({ row, column }), text, reading });
  }
  return { done: written(injector, sheet, value), doubts };
}

function cellOf(text: string, reading: Reading | null): ICellData {
  const read = reading && !staysText(reading) ? getNumfmtParseValueFilter(reading.entry) : null;
  const plain = { p: null, f: null, si: null };
  if (typeof read?.v !== "number") return { ...plain, v: text, t: CellValueType.STRING };
  return { ...plain, v: read.v, t: CellValueType.NUMBER, ...(read.z && { s: { n: { pattern: read.z } } }) };
}
