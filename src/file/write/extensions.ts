import { attributeOf, type Cut, cut, join, type Piece } from "./rawXml";
import { put, rawOf } from "./sheetOrder";

const isCalled = (uri: string, { name, raw }: Piece): boolean =>
  name === "ext" && attributeOf(raw, "uri")?.toUpperCase() === uri.toUpperCase();

/** What newer programs say under this mark in a sheet. */
export const extensionOf = (sheet: Cut, uri: string): string | undefined =>
  cut(rawOf(sheet, "extLst") ?? "<extLst/>").pieces.find((piece) => isCalled(uri, piece))?.raw;

/** Puts another text in its place, or behind the others; an empty one takes it away. */
export function putExtension(sheet: Cut, uri: string, text: string): void {
  const list = cut(rawOf(sheet, "extLst") ?? "<extLst/>");
  const pieces = list.pieces.flatMap((piece) => {
    if (!isCalled(uri, piece)) return [piece];
    return text === "" ? [] : [{ ...piece, raw: text }];
  });
  if (text !== "" && !list.pieces.some((piece) => isCalled(uri, piece))) pieces.push({ name: "ext", raw: text });
  const isEmpty = pieces.every(({ name }) => name === "");
  put(sheet, "extLst", isEmpty ? "" : join({ ...list, pieces }));
}
