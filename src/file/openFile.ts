import type { Book, Remark } from "./book";
import { readCsv } from "./csv/readCsv";
import { fileKind, workbookIn } from "./read/fileKind";
import { readWorkbook } from "./read/readWorkbook";
import { damaged, FileRefused } from "./refused";
import { unpack } from "./zip/unpack";

/** How much of the work it is to unpack a file. */
const UNPACKING = 0.2;

/**
 * The workbook in a file of the maker's, .xlsx or .csv, and what the page does not show of it. Throws FileRefused,
 * whose message says what to do, for any other file.
 * @param progress is told the share that is done, again and again; what it throws stops the work and comes through
 */
export function openFile(
  bytes: Uint8Array,
  name: string,
  progress?: (share: number) => void,
): { book: Book; remarks: Remark[] } {
  const stop: { by?: unknown } = {};
  const tell = (share: number): void => {
    try {
      progress?.(share);
    } catch (error) {
      stop.by = error;
      throw error;
    }
  };
  try {
    return open(bytes, name, tell);
  } catch (error) {
    if (error instanceof FileRefused || error === stop.by) throw error;
    // No file may bring the page down, whatever nobody has thought of.
    throw damaged("It cannot be read.", error);
  }
}

function open(bytes: Uint8Array, name: string, progress: (share: number) => void): { book: Book; remarks: Remark[] } {
  if (fileKind(bytes) === "text") return readCsv(bytes, name);
  const pack = unpack(bytes, (share) => progress(share * UNPACKING));
  return readWorkbook(pack, workbookIn(pack), (share) => progress(UNPACKING + share * (1 - UNPACKING)));
}
