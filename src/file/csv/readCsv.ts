import type { Book, Remark } from "../book";
import { FileRefused } from "../refused";

export function readCsv(_bytes: Uint8Array, _name: string): { book: Book; remarks: Remark[] } {
  throw new FileRefused("This file is no workbook. Choose an .xlsx workbook.");
}
