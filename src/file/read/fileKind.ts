import { FileRefused, tooLarge } from "../refused";
import { contentTypes, workbookPath } from "../zip/package";
import type { Package } from "../zip/unpack";

const MB = 1_000_000;
export const LARGEST_FILE = 100 * MB;
const SAVE_AS = "Open it in the program that made it, save it there as an .xlsx workbook, and open that here.";

/** What the first bytes of a file say that it is; refuses what is neither a zip nor text. */
export function fileKind(bytes: Uint8Array): "zip" | "text" {
  if (bytes.length === 0) throw new FileRefused("This file is empty. Choose the workbook that has your figures.");
  if (bytes.length > LARGEST_FILE) {
    throw tooLarge(`It has ${Math.ceil(bytes.length / MB)} MB; the page opens up to ${LARGEST_FILE / MB} MB.`);
  }
  if (beginsWith(bytes, 0x50, 0x4b)) return "zip";
  if (beginsWith(bytes, 0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1)) throw compound(bytes);
  // A record that begins a sheet of the oldest kinds.
  if (bytes[0] === 9 && [0, 2, 4, 8].includes(bytes[1] ?? -1)) throw oldWorkbook();
  if (beginsWith(bytes, 0x25, 0x50, 0x44, 0x46)) {
    throw new FileRefused(
      "This is a PDF, a picture of pages without cells. Choose the workbook that it was printed from.",
    );
  }
  return "text";
}

/** The path of the workbook in a package; refuses packages of other kinds. */
export function workbookIn(pack: Package): string {
  const { parts } = pack;
  const mimetype = new TextDecoder().decode(parts.get("mimetype")?.subarray(0, 100));
  if (mimetype.includes("opendocument")) {
    throw new FileRefused(`This is an OpenDocument file, such as .ods. ${SAVE_AS}`);
  }
  if ([...parts.keys()].some((path) => path.endsWith(".iwa") || path === "Index.zip")) {
    throw new FileRefused(
      "This file is of another kind (.numbers). Export it there as an .xlsx workbook, and open that here.",
    );
  }
  const path = workbookPath(pack);
  if (path === undefined || !parts.has(path)) {
    throw new FileRefused(
      "There is no workbook in this file. Choose an .xlsx workbook; if it lies in a .zip, unpack that first.",
    );
  }
  checkType(contentTypes(pack)(path), parts);
  return path;
}

function checkType(type: string, parts: Package["parts"]): void {
  if (type.includes("binary")) throw new FileRefused(`This is a binary workbook (.xlsb). ${SAVE_AS}`);
  if (type.includes("macroenabled") || [...parts.keys()].some((path) => /(?:^|\/)vbaProject\.bin$/i.test(path))) {
    throw new FileRefused(
      "This workbook has macros (.xlsm), which the page neither runs nor keeps. Save it in the program that made it as an " +
        ".xlsx workbook, which leaves the macros out, and open that here.",
    );
  }
  if (type.includes("spreadsheetml.template"))
    throw new FileRefused(`This is a template (.xltx), not a workbook. ${SAVE_AS}`);
  if (type.includes("spreadsheetml.sheet.main")) return;
  if (/wordprocessingml|presentationml|visio/.test(type)) {
    throw new FileRefused("This file is a document or a presentation, not a workbook. Choose an .xlsx workbook.");
  }
  throw new FileRefused(`What this file holds is not marked as a workbook. ${SAVE_AS}`);
}

/** Files of this container are old workbooks, or younger ones behind a password; its list of contents tells. */
function compound(bytes: Uint8Array): FileRefused {
  // Its names are in UTF-16 and begin at even places.
  const text = new TextDecoder("utf-16le").decode(bytes);
  const has = (name: string): boolean => text.includes(name);
  if (has("EncryptedPackage")) {
    return new FileRefused(
      "This file is locked with a password. Take the password off in the program that made it, and open it again.",
    );
  }
  if (has("Workbook") || has("Book")) return oldWorkbook();
  return new FileRefused("This file is of an old kind and no workbook. Choose an .xlsx workbook.");
}

const oldWorkbook = (): FileRefused => new FileRefused(`This is a workbook of the old kind (.xls). ${SAVE_AS}`);

const beginsWith = (bytes: Uint8Array, ...start: number[]): boolean => start.every((byte, i) => bytes[i] === byte);
