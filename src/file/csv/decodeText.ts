import { FileRefused } from "../refused";

/** What stands in no text: control characters other than tabs, ends of lines and pages, and the separators. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: these are what must not be there.
const NO_TEXT = /[\u0000-\u0008\u000e-\u001d\ufffe\uffff]/;

/** The text in a file: by its mark, else UTF-8, else what older programs of western countries write. */
export function decodeText(bytes: Uint8Array): string {
  const text = decoded(bytes);
  if (NO_TEXT.test(text)) {
    throw new FileRefused("This file is neither a workbook nor a list in plain text. Choose an .xlsx or a .csv file.");
  }
  return text;
}

function decoded(bytes: Uint8Array): string {
  const utf16 = utf16Name(bytes);
  if (utf16) return new TextDecoder(utf16).decode(bytes);
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder("windows-1252").decode(bytes);
  }
}

/** UTF-16 has a mark, or a zero beside each of the first letters. */
function utf16Name([a, b, c, d]: Uint8Array): string | undefined {
  if ((a === 0xff && b === 0xfe) || (a && b === 0 && c && d === 0)) return "utf-16le";
  if ((a === 0xfe && b === 0xff) || (a === 0 && b && c === 0 && d)) return "utf-16be";
  return undefined;
}
