import type { Book, Remark } from "./book";
import { emptyBook, PLAIN_STYLE } from "./emptyBook";
import { openFile } from "./openFile";
import { same } from "./same";
import { changeBook } from "./write/changeBook";
import { newPackage } from "./write/newPackage";
import { pack } from "./write/pack";
import { PackageEdit } from "./write/packageEdit";
import { unpack } from "./zip/unpack";

/**
 * The bytes of a workbook file. What is as it was in the file that the book came from stays as it stands there, byte
 * for byte in each part; what differs is put in. Without such a file a new one is made.
 * @returns `lost` names what the file cannot keep as it was
 */
export function saveBook(original: Uint8Array | null, now: Book): { bytes: Uint8Array; lost: Remark[] } {
  if (original === null) {
    const file = new PackageEdit(newPackage(now.styles[0] ?? PLAIN_STYLE));
    const lost = changeBook(file, emptyBook(), now);
    return { bytes: pack(file.parts), lost };
  }
  const { book: before } = openFile(original, "workbook.xlsx");
  if (same(before, now)) return { bytes: original, lost: [] };
  const file = new PackageEdit(unpack(original).parts);
  const lost = changeBook(file, before, now);
  return { bytes: pack(file.parts), lost };
}
