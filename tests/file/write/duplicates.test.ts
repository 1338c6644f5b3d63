import { strFromU8, unzipSync } from "fflate";
import { describe, expect, it } from "vitest";
import type { Book, BookSheet } from "../../../src/file/book";
import { openFile } from "../../../src/file/openFile";
import { saveBook } from "../../../src/file/saveBook";
import { duplicateOf } from "../../../src/file/write/duplicate";
import { richWorkbook } from "../richWorkbook";
import { faultsOf } from "./packageFaults";

/** A duplicate of a sheet has what the page knows nothing of, or it is said that it goes without. */

const original = richWorkbook();
const { book } = openFile(original, "rich.xlsx");

/** A file in which a sheet stands once more, as far as books tell of it. */
function duplicated(name: string, change: (copy: BookSheet) => BookSheet = (copy) => copy) {
  const source = book.sheets.find((sheet) => sheet.name === name) as BookSheet;
  const copy = change({ ...source, id: "new", copyOf: source.id, name: "Copy & more", tables: [] });
  const now: Book = { ...book, sheets: [...book.sheets, copy] };
  const { bytes, lost } = saveBook(original, now);
  expect(faultsOf(bytes)).toEqual([]);
  const parts = unzipSync(bytes);
  return {
    ...{ source, copy },
    lost: lost.map(({ sheet, what }) => `${sheet}: ${what}`),
    said: lost.map(({ consequence }) => consequence),
    text: (path: string): string => strFromU8(parts[path] ?? new Uint8Array()),
    opened: openFile(bytes, "rich.xlsx").book.sheets.at(-1) as BookSheet,
  };
}

const COPY = "xl/worksheets/sheet1.xml";
const all = (text: string, pattern: RegExp): string[] => [...text.matchAll(pattern)].map(([found]) => found);

describe("a duplicate of a sheet", () => {
  const { source, copy, text, opened, lost, said } = duplicated("Maker's costs");
  const own = strFromU8(unzipSync(original)["xl/sheets/costs.xml"] ?? new Uint8Array());

  it("has the looks of its rules whole: the number format that the page shows nothing of too", () => {
    const rules = all(own, /<cfRule [^>]*dxfId="\d+"[^>]*>/g);
    // The second look of the file is a number format alone.
    expect(rules.join()).toContain('dxfId="1"');
    expect(all(text(COPY), /<cfRule [^>]*dxfId="\d+"[^>]*>/g)).toEqual(rules);
  });

  it("has the rules that stand in the younger list alone", () => {
    const younger = all(own, /<x14:cfRule .*?<\/x14:cfRule>/g);
    expect(younger.join()).toContain("x14:dxf");
    expect(all(text(COPY), /<x14:cfRule .*?<\/x14:cfRule>/g)).toEqual(younger);
  });

  it("shows in cells charts of its own cells", () => {
    expect(text(COPY)).toContain("<xm:f>'Copy &amp; more'!B4:B6</xm:f>");
    expect(text("xl/sheets/costs.xml")).toBe(own);
  });

  it("holds all that the book tells of it, notes and links in parts of its own", () => {
    const { copyOf: _, ...told } = copy;
    // A note of a conversation says who wrote it as a plain one does.
    expect({ ...opened, id: "new", notes: [] }).toEqual({ ...told, notes: [] });
    expect(opened.notes.map(({ text }) => text)).toEqual(source.notes.map(({ text }) => text));
  });

  it("is named with what it goes without", () => {
    expect(lost).toEqual(["a chart", "a picture", "conversations in comments"].map((what) => `Copy & more: ${what}`));
    expect(new Set(said)).toEqual(new Set([`This sheet is a duplicate of "Maker's costs" and goes without.`]));
  });

  it("says what did not move when its rows did", () => {
    const moved = duplicated("Maker's costs", (sheet) => ({
      ...sheet,
      rows: sheet.rows.map((row) => ({ ...row, row: row.row + 1 })),
    }));
    expect(moved.lost).toContain("Copy & more: charts in cells");
  });
});

it("charts in cells of a duplicate have no ids of others", () => {
  const text = `<worksheet><extLst><ext><x14:sparklineGroups><x14:sparklineGroup type="line" xr2:uid="{1}"><x14:sparklines><x14:sparkline><xm:f>Own!A1:A3</xm:f></x14:sparkline></x14:sparklines></x14:sparklineGroup></x14:sparklineGroups></ext></extLst></worksheet>`;
  const now = duplicateOf(text, { ...(book.sheets[0] as BookSheet), name: "Own" }, "Other");
  expect(now).toBe(text.replace(' xr2:uid="{1}"', "").replace("Own!", "'Other'!"));
});

it("a duplicate has a filter that files alone have words for", () => {
  // The second column of the sheet's own filter shows the ten highest.
  const { lost, text } = duplicated("Old");
  expect(text(COPY)).toContain("<top10 ");
  expect(lost).toEqual(["Copy & more: custom views"]);
});

it("a duplicate is printed as its sheet is, and one tab alone is chosen", () => {
  const { text } = duplicated("Pours");
  const book = text("xl/book.xml");
  expect(book).toContain(
    `<definedName name="_xlnm.Print_Area" localSheetId="5">'Copy &amp; more'!$A$1:$F$7</definedName>`,
  );
  expect(book).toContain("'Copy &amp; more'!$A:$A,'Copy &amp; more'!$3:$3</definedName>");
  expect(text(COPY)).not.toContain("tabSelected");
  // The printer's own settings are the sheet's alone.
  expect(text(COPY)).toMatch(/<pageSetup (?![^>]*r:id)/);
});
