import { readFileSync } from "node:fs";
import { join } from "node:path";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { rawZip } from "../rawZip";
import { richParts } from "../richWorkbook";
import { faultsOf } from "./packageFaults";

const sample = unzipSync(readFileSync(join(import.meta.dirname, "../../../sample-workbooks/1-studio.xlsx")));
const TABLE = "xl/tables/table1.xml";
const SHEET = "xl/worksheets/sheet1.xml";
const METADATA = "xl/metadata.xml";
const TYPES = "[Content_Types].xml";
const WORKBOOK = "xl/workbook.xml";
const STYLES = "xl/styles.xml";
const SHOWN = '<bookViews><workbookView activeTab="99"/></bookViews><sheets>';

/** By other paths, and with more that a workbook can hold. */
const rich = richParts();

/** A sheet that has a formula with a mark, and one with a table. */
const having = (words: string): string =>
  Object.keys(sample).find((path) => /^xl\/worksheets\/\w+\.xml$/.test(path) && textAt(path).includes(words)) as string;
const textAt = (path: string): string => strFromU8(sample[path] as Uint8Array);

function spoiled(path: string, from: string | RegExp, to: string): string[] {
  const whole = path in sample ? sample : rich;
  const before = strFromU8(whole[path] as Uint8Array);
  const after = before.replace(from, to);
  expect(after).not.toBe(before);
  return faultsOf(zipSync({ ...whole, [path]: strToU8(after) }));
}

describe("the faults of a package", () => {
  it("are none in a sample, nor in a workbook with all that we know of", () => {
    expect(faultsOf(zipSync(sample))).toEqual([]);
    expect(faultsOf(zipSync(rich))).toEqual([]);
  });

  it("are found: a part that is in the zip twice", () => {
    const entries = Object.entries(sample).map(([path, content]) => ({ path, content }));
    const twice = { path: TABLE.toUpperCase(), content: sample[TABLE] as Uint8Array };
    expect(faultsOf(rawZip([...entries, twice])).join("\n")).toMatch(/table1\.xml is in the zip twice/);
  });

  it.each<[string, string, string | RegExp, string, RegExp]>([
    [
      "a part that does not say what it is",
      TYPES,
      /<Default Extension="rels"[^>]*>/,
      "",
      /rels does not say what it is/,
    ],
    [
      "a part that is not there",
      TYPES,
      "/xl/tables/table1.xml",
      "/xl/tables/none.xml",
      /none\.xml is said to be there/,
    ],
    ["a relation that leads nowhere", "xl/_rels/workbook.xml.rels", "styles.xml", "none.xml", /leads to xl\/none\.xml/],
    ["a relation's id that is used and not there", WORKBOOK, /r:id="[^"]*"/, 'r:id="none"', /uses none/],
    ["two sheets of one number", WORKBOOK, /sheetId="2"/, 'sheetId="1"', /two sheets have the number 1/],
    ["elements out of order", SHEET, /(<sheetPr.*?<\/sheetPr>)(.*)<\/worksheet>/s, "$2$1</worksheet>", /out of order/],
    ["a cell of a look that is not there", SHEET, /<c r="A1" s="\d+"/, '<c r="A1" s="99999"', /A1 has no look/],
    ["a cell that stands twice", SHEET, /(<c r="A1".*?<\/c>)/s, "$1$1", /has A1 twice/],
    ["a mark that is not there", having(' cm="1"'), / cm="1"/, ' cm="2"', /has no mark/],
    ["two tables of one number", TABLE, / id="1" name/, ' id="2" name', /two tables have the number 2/],
    ["a doubled heading", TABLE, /(<tableColumn id="2" name=)"[^"]*"/, '$1"Vessel"', /has a column vessel twice/],
    ["a column under another heading", TABLE, 'name="Vessel"', 'name="Pot"', /a column Pot under another heading/],
    ["a table wider than its columns", TABLE, /ref="A4:H19"/, 'ref="A4:I19"', /has 8 columns on A4:I19/],
    ["a filter longer than its table", TABLE, '<autoFilter ref="A4:H19"', '<autoFilter ref="A4:H20"', /not within it/],
    ["a filter of a column beyond", TABLE, 'colId="7"', 'colId="8"', /not within it/],
    ["a count that is not so", METADATA, '<cellMetadata count="1"', '<cellMetadata count="2"', /does not hold 2/],
    ["a record of a type that is not there", METADATA, '<rc t="1"', '<rc t="2"', /cellMetadata leads to/],
    ["a record of a property that is not there", METADATA, 'v="0"', 'v="1"', /cellMetadata leads to/],
    [
      "a sheet that is plain XML",
      TYPES,
      /<Override PartName="\/xl\/worksheets\/sheet1\.xml"[^>]*>/,
      "",
      /be a worksheet/,
    ],
    ["a table that is said to be a sheet", TYPES, /(table1\.xml"[^>]*)table\+xml/, "$1worksheet+xml", /be a table/],
    ["a part that is cut off", SHEET, "</worksheet>", "", /is no XML: .*unclosed/],
    ["a letter that XML does not have", SHEET, "<v>0</v>", "<v>\u0001</v>", /is no XML: .*disallowed character/],
    [
      "a text that is not there",
      SHEET,
      '<c r="A1" s="1" t="s"><v>0',
      '<c r="A1" s="1" t="s"><v>99999',
      /A1 cannot hold/,
    ],
    [
      "a number without end",
      SHEET,
      '<c r="A1" s="1" t="s"><v>0',
      '<c r="A1" s="1"><v>Infinity',
      /cannot hold Infinity/,
    ],
    ["a truth that is none", SHEET, '<c r="A1" s="1" t="s"><v>0', '<c r="A1" s="1" t="b"><v>TRUE', /cannot hold TRUE/],
    [
      "an error of no program",
      SHEET,
      '<c r="A1" s="1" t="s"><v>0',
      '<c r="A1" s="1" t="e"><v>#OH!',
      /cannot hold #OH!/,
    ],
    ["cells out of order", SHEET, /(<c r="A4".*?<\/c>)(<c r="B4"[^>]*>)/, "$2$1", /out of order in row 4/],
    ["a cell in another row", SHEET, '<c r="B4"', '<c r="B2"', /out of order in row 4/],
    ["columns that are said twice", SHEET, /(<col [^>]*>)/, "$1$1", /columns out of order/],
    ["a column that is too wide", SHEET, 'width="45"', 'width="300"', /too wide/],
    ["a row that is too high", SHEET, 'ht="45"', 'ht="450"', /too high/],
    ["cells merged twice", SHEET, '<mergeCell ref="A5:B5"/>', '<mergeCell ref="A4:A5"/>', /A4:A5 over another/],
    [
      "cells merged in a table",
      having("<tablePart "),
      /<mergeCell ref="[^"]*"/,
      '<mergeCell ref="A5:B5"',
      /over another/,
    ],
    ["a table that its sheet does not list", having("<tablePart "), /<tableParts.*<\/tableParts>/, "", /not list its/],
    ["a formula that fills another's cells", having('t="array"'), /(t="array" ref="\w+)"/, '$1:Z99"', /over another/],
    ["a table of headings alone", TABLE, / ref="A4:H19"/, ' ref="A4:H4"', /no row of its own/],
    ["a table called like a cell", TABLE, 'displayName="Vessels"', 'displayName="VES1"', /can be called ves1/],
    ["a table called in two words", TABLE, 'displayName="Vessels"', 'displayName="My jars"', /can be called my jars/],
    [
      "a table called as a name is",
      "xl/tables/pours.xml",
      'displayName="Pours"',
      'displayName="Markup"',
      /called markup/,
    ],
    ["a look of a font that is not there", STYLES, 'fontId="1"', 'fontId="99"', /a fontId 99 that is not there/],
    [
      "a look of a format that is not there",
      STYLES,
      '<numFmt numFmtId="164"',
      '<numFmt numFmtId="199"',
      /numFmtId 164/,
    ],
    ["a look that rests on none", STYLES, / xfId="0"/, ' xfId="7"', /a xfId 7/],
    ["a condition without its look", "xl/sheets/costs.xml", 'dxfId="1"', 'dxfId="9"', /without its look 9/],
    ["notes without boxes", "xl/sheets/costs.xml", /<legacyDrawing[^>]*>/, "", /notes without boxes/],
    ["a name that no sheet can have", WORKBOOK, 'name="Read me"', 'name="Read: me"', /can be called Read: me/],
    ["a name of 32 letters", WORKBOOK, 'name="Read me"', `name="${"a".repeat(32)}"`, /can be called a{32}/],
    ["no sheet that is shown", WORKBOOK, /state="visible"/g, 'state="hidden"', /no sheet is shown/],
    ["a sheet in front that is not there", WORKBOOK, "<sheets>", SHOWN, /the sheet 99 that is shown/],
  ])("are found: %s", (_, path, from, to, fault) => {
    expect(spoiled(path, from, to).join("\n")).toMatch(fault);
  });
});
