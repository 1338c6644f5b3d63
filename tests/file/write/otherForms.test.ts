import { strFromU8, strToU8, zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { openFile } from "../../../src/file/openFile";
import { saveBook } from "../../../src/file/saveBook";
import { worked } from "../outside/worked";
import { richParts } from "../richWorkbook";

/** The same workbook in the other forms that the standard allows and programs write. */

type Change = (xml: string, path: string) => string | Uint8Array;

function inForm(change: Change): Uint8Array {
  const parts = Object.entries(richParts()).map(([path, content]): [string, Uint8Array] => {
    if (!/\.(xml|rels)$/.test(path)) return [path, content];
    const changed = change(strFromU8(content), path);
    return [path, typeof changed === "string" ? strToU8(changed) : changed];
  });
  return zipSync(Object.fromEntries(parts));
}

const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";

/** Every element of the workbook's own behind a prefix, as some libraries write them. */
const prefixed: Change = (xml) => {
  const root = /<(?!\?)[^>]*>/.exec(xml)?.[0] ?? "";
  if (!root.includes(`xmlns="${MAIN}"`)) return xml;
  return xml.replace(`xmlns="${MAIN}"`, `xmlns:x="${MAIN}"`).replace(/<(\/?)([A-Za-z]\w*)(?=[\s/>])/g, "<$1x:$2");
};

const strict: Change = (xml) =>
  xml
    .replaceAll(MAIN, "http://purl.oclc.org/ooxml/spreadsheetml/main")
    .replaceAll(
      "http://schemas.openxmlformats.org/officeDocument/2006/relationships",
      "http://purl.oclc.org/ooxml/officeDocument/relationships",
    );

const wide: Change = (xml) => {
  const text = `\ufeff${xml.replace("UTF-8", "UTF-16")}`;
  return new Uint8Array(Uint16Array.from(text, (letter) => letter.charCodeAt(0)).buffer);
};

/** Rows and cells may leave out where they are when they follow each other. */
const unplaced: Change = (xml, path) => (path.endsWith("summary.xml") ? xml.replace(/<c r="[A-Z]+\d+"/g, "<c") : xml);

const quotes: Change = (xml) => xml.replace(/<[^>]*>/g, (tag) => (tag.includes("'") ? tag : tag.replaceAll('"', "'")));

const spaced: Change = (xml) => xml.replace(/<(row|c|col|sheet|cellXfs|xf|Override|Relationship)\b/g, "\r\n  <$1");

describe("a workbook in another form", () => {
  it.each<[string, Change]>([
    ["with prefixes", prefixed],
    ["strict", strict],
    ["in UTF-16", wide],
    ["with cells that do not say where they are", unplaced],
    ["with the other quotes", quotes],
    ["with lines and spaces between its elements", spaced],
  ])("is changed like any other: %s", (_, form) => {
    const original = inForm(form);
    const { book } = openFile(original, "a.xlsx");
    expect(saveBook(original, book).bytes).toBe(original);
    const now = worked(book);
    const saved = openFile(saveBook(original, now).bytes, "a.xlsx").book;
    const ids = (sheets: typeof now.sheets) => sheets.map(({ id: _id, ...sheet }) => sheet);
    expect(ids(saved.sheets)).toEqual(ids(withMarks(now.sheets)));
    expect({ ...saved, sheets: [] }).toEqual({ ...now, sheets: [] });
  });
});

/** A formula of ours is a dynamic array in the file also where it fills its own cell alone. */
const withMarks = (sheets: ReturnType<typeof worked>["sheets"]): typeof sheets =>
  sheets.map((sheet) => ({
    ...sheet,
    rows: sheet.rows.map((row) => ({
      ...row,
      cells: row.cells.map((cell) =>
        cell.formula?.includes("POUR.") && !cell.spill
          ? { ...cell, spill: { rows: 1, columns: 1, dynamic: true } }
          : cell,
      ),
    })),
  }));
