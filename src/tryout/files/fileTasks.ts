/** What the worker does: a file becomes a workbook for the sheet, and the other way round. */

import type { IWorkbookData } from "@univerjs/core";
import type { Book, Remark } from "../../file/book";
import { callsOurs } from "../../file/formula/callsOurs";
import { openFile } from "../../file/openFile";
import { saveBook } from "../../file/saveBook";
import { fromUniver, type WorkedOut } from "../../host/univer/file/fromUniver";
import { notWorkedOut } from "../../host/univer/file/notWorkedOut";
import { sheetData, workbookFrame } from "../../host/univer/file/toUniver";
import { type Piece, sheetPieces } from "./pieces";

/** Whatever the worker says: how far it is, a part of the result, the end of it, or why there is none. */
export type Answer =
  | { readonly share: number }
  | { readonly piece: Piece }
  | { readonly opened: { readonly remarks: readonly Remark[] } }
  | { readonly saved: { readonly bytes: Uint8Array; readonly lost: readonly Remark[]; readonly callsOurs: boolean } };

/** How much of the work is done once the file is read: the rest brings it over. */
const READ = 0.7;

/** How much is done once the file that a workbook came from is read again, and once it is compared. */
const COMPARED = { read: 0.4, compared: 0.6 };

/** A workbook's id here is anybody's: it gets one of its own when the sheet opens it. */
const ANY = "file";

export function openTask(bytes: Uint8Array, name: string, post: (answer: Answer) => void): void {
  const { book, remarks } = openFile(bytes, name, (share) => post({ share: share * READ }));
  post({ piece: { frame: workbookFrame(book, ANY) } });
  for (const [i, sheet] of book.sheets.entries()) {
    const data = { ...sheetData(sheet, book), id: sheet.id };
    for (const piece of sheetPieces(data)) post({ piece });
    post({ share: READ + ((1 - READ) * (i + 1)) / book.sheets.length });
  }
  post({ opened: { remarks } });
}

/** `original` is the file that the workbook came from, null for none. */
export function saveTask(
  { original, data, worked }: { original: Uint8Array | null; data: IWorkbookData; worked: WorkedOut },
  post: (answer: Answer) => void,
): void {
  const openedAs = original && openFile(original, "", (share) => post({ share: share * COMPARED.read })).book;
  const now = fromUniver(data, openedAs, worked);
  const { book, remarks } = notWorkedOut(now, openedAs);
  post({ share: COMPARED.compared });
  const { bytes, lost } = saveBook(original, book);
  post({ saved: { bytes, lost: [...lost, ...remarks], callsOurs: hasOurs(book) } });
}

const hasOurs = ({ sheets }: Book): boolean =>
  sheets.some(({ rows }) => rows.some(({ cells }) => cells.some(({ formula }) => formula && callsOurs(formula))));
