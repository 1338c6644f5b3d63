/**
 * A duplicate of a sheet begins as the sheet of the file that it was made from: its looks, rules and set-up keep what
 * only the file knows of them. What stands in parts of its own stays with that sheet.
 */

import type { BookSheet } from "../book";
import { attributesOf, cut, escapeText, join, type Piece, unescapeText, withAttributes } from "./rawXml";
import { inAnyCase, type Renames, renamedIn } from "./renames";

/** What the text of a duplicate says, for the book to be compared with. */
export const withoutParts = (source: BookSheet): BookSheet => ({ ...source, tables: [], notes: [], links: [] });

/** The text that a duplicate begins with. `name` is what it is called. */
export function duplicateOf(text: string, source: BookSheet, name: string): string {
  const { head, pieces, tail } = cut(text);
  const renames = inAnyCase([[source.name, name]]);
  const own = pieces.flatMap((piece): Piece[] => {
    const changed = CHANGES[piece.name];
    if (changed) return [{ ...piece, raw: changed(piece.raw, renames) }];
    return GONE.has(piece.name) || namesPart(piece.raw) ? [] : [piece];
  });
  return withAttributes(join({ head, pieces: own, tail }), { "xr:uid": null });
}

/** Links are put in anew; views go by ids of the workbook. */
const GONE: ReadonlySet<string> = new Set(["hyperlinks", "customSheetViews"]);

const CHANGES: Readonly<Record<string, (raw: string, renames: Renames) => string>> = {
  sheetData: (raw) => raw,
  // The name by which programs of macros know a sheet is one sheet's alone.
  sheetPr: (raw) => withAttributes(raw, { codeName: null }),
  sheetViews: (raw) => eachIn(raw, (view) => withAttributes(view, { tabSelected: null })),
  pageSetup: (raw) => withAttributes(raw, Object.fromEntries(partNames(raw).map((name) => [name, null]))),
  extLst: (raw, renames) => {
    const list = cut(raw);
    const kept = list.pieces.filter((piece) => !namesPart(piece.raw));
    return join({ ...list, pieces: kept.map((piece) => ({ ...piece, raw: withOwnCharts(piece.raw, renames) })) });
  },
};

const eachIn = (raw: string, change: (piece: string) => string): string => {
  const list = cut(raw);
  return join({
    ...list,
    pieces: list.pieces.map((one) => (one.name === "" ? one : { ...one, raw: change(one.raw) })),
  });
};

/** An attribute by which an element names another part, whatever the prefix. */
const PART = /\s[\w-]+:(?:id|embed|link|pict)\s*=\s*["']/;

const namesPart = (raw: string): boolean => PART.test(raw);

const partNames = (raw: string): string[] => [...attributesOf(raw).keys()].filter((name) => /^[\w-]+:id$/.test(name));

/** Charts in cells show the duplicate's cells, where they showed those of the sheet itself. */
const withOwnCharts = (raw: string, renames: Renames): string =>
  /<(?:\w+:)?sparklineGroups[\s>]/.test(raw)
    ? withoutIds(raw).replace(/(<xm:f>)([^<]*)(?=<\/xm:f>)/g, (found, tag: string, formula: string) => {
        const said = unescapeText(formula);
        const renamed = renamedIn(said, renames);
        return renamed === said ? found : tag + escapeText(renamed);
      })
    : raw;

/** Ids that are no other group's. */
const withoutIds = (raw: string): string =>
  raw.replace(/<(?:\w+:)?sparklineGroup\b[^>]*>/g, (tag) => tag.replace(/\s[\w-]+:uid="[^"]*"/, ""));
