import { attributeOf, type Cut, cut, join } from "./rawXml";
import { put, rawOf } from "./sheetOrder";

/** Takes what newer programs say under this mark out of a sheet; tells whether it was there. */
export function withoutExtension(sheet: Cut, uri: string): boolean {
  const raw = rawOf(sheet, "extLst");
  if (raw === undefined) return false;
  const list = cut(raw);
  const kept = list.pieces.filter((piece) => attributeOf(piece.raw, "uri")?.toUpperCase() !== uri.toUpperCase());
  if (kept.length === list.pieces.length) return false;
  const isEmpty = kept.every(({ name }) => name === "");
  put(sheet, "extLst", isEmpty ? "" : join({ ...list, pieces: kept }));
  return true;
}
