import { cellPlace } from "../../../src/file/addresses";
import type { Book, BookCell, BookSheet } from "../../../src/file/book";
import { openFile } from "../../../src/file/openFile";
import { richWorkbook } from "../richWorkbook";

/** The rich workbook as it is read. */
export const { book, remarks } = openFile(richWorkbook(), "rich.xlsx");

export function sheetOf(name: string, from: Book = book): BookSheet {
  const sheet = from.sheets.find((one) => one.name === name);
  if (!sheet) throw new Error(`no sheet ${name}`);
  return sheet;
}

export function cell(address: string, sheet = "Maker's costs", from: Book = book): Partial<BookCell> | undefined {
  const place = cellPlace(address);
  const found = sheetOf(sheet, from)
    .rows.find(({ row }) => row === place?.row)
    ?.cells.find(({ column }) => column === place?.column);
  if (!found) return undefined;
  const { column: _, ...rest } = found;
  return rest;
}
