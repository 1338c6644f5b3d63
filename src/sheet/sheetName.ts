/** The most characters a sheet name may have. */
const LONGEST = 31;

/**
 * A sheet name that a workbook takes: the wish without what no sheet name may hold (`: \ / ? * [ ]`, an
 * apostrophe at either end), at most 31 characters, and with a number behind it when the name is taken. Names
 * that differ only in capitals are the same name.
 */
export function sheetName(wish: string, taken: readonly string[]): string {
  // "History" is kept by Excel for itself.
  const used = new Set(["history", ...taken.map((name) => name.toLowerCase())]);
  const clean = wish.replace(/\s*[:\\/?*[\]\p{Cc}]+\s*/gu, " ").trim();
  for (let count = 1; ; count++) {
    const ending = count === 1 ? "" : ` (${count})`;
    const name = `${shorten(clean, LONGEST - ending.length) || "Sheet"}${ending}`;
    if (!used.has(name.toLowerCase())) return name;
  }
}

/** Cut to a length without leaving half a character, a space or an apostrophe at an end. */
function shorten(text: string, length: number): string {
  let short = "";
  for (const character of text.replace(/^['\s]+/, "")) {
    if (short.length + character.length > length) break;
    short += character;
  }
  return short.replace(/['\s]+$/, "");
}

/** A sheet's name in quotes, for references: `'Tom''s list'`. */
export const quotedName = (name: string): string => `'${name.replaceAll("'", "''")}'`;
