/** Where the links of a file lead, in Univer's addresses, and back. */

import type { Book, Link } from "../../../file/book";
import { quotedName } from "../../../sheet/sheetName";

type Target = Pick<Link, "address" | "place">;

/** What a press may open. Files beside the workbook are out of reach, and a script in a link must never run. */
const OPENED = /^(https?|mailto|tel|ftp):/i;

/** Null for what Univer cannot or must not lead to. */
export function urlOf({ address, place }: Target, book: Pick<Book, "sheets" | "names">): string | null {
  const { sheets, names } = book;
  if (address !== null) {
    // Some programs write a place in the workbook so.
    if (address.startsWith("#")) return urlOf({ address: null, place: address.slice(1) }, book);
    if (!OPENED.test(address)) return null;
    return place === null ? address : `${address}#${place}`;
  }
  if (place === null) return null;
  const parts = /^(?:'((?:[^']|'')+)'|([^'!]+))!(\$?[A-Z]+\$?\d+(?::\$?[A-Z]+\$?\d+)?)$/i.exec(place);
  if (parts) {
    const wanted = (parts[1]?.replaceAll("''", "'") ?? parts[2] ?? "").toLowerCase();
    const sheet = sheets.find(({ name }) => name.toLowerCase() === wanted);
    return sheet ? `#gid=${sheet.id}&range=${parts[3]?.replaceAll("$", "")}` : null;
  }
  const index = names.findIndex(({ name }) => name.toLowerCase() === place.toLowerCase());
  return index < 0 ? null : `#rangeid=d${index}`;
}

/** Where an address of Univer's leads. */
export function targetOf(
  url: string,
  sheetName: (id: string) => string | undefined,
  definedName: (id: string) => string | undefined,
): Target {
  if (!url.startsWith("#")) return { address: url, place: null };
  const said = new URLSearchParams(url.slice(1));
  const name = definedName(said.get("rangeid") ?? "");
  if (name) return { address: null, place: name };
  const sheet = sheetName(said.get("gid") ?? "");
  return { address: null, place: sheet ? `${quotedName(sheet)}!${said.get("range") || "A1"}` : url.slice(1) };
}
