import { readFileSync } from "node:fs";
import { join } from "node:path";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { faultsOf } from "./packageFaults";

const sample = unzipSync(readFileSync(join(import.meta.dirname, "../../../sample-workbooks/1-studio.xlsx")));
const TABLE = "xl/tables/table1.xml";
const SHEET = "xl/worksheets/sheet1.xml";
const METADATA = "xl/metadata.xml";
const TYPES = "[Content_Types].xml";
const WORKBOOK = "xl/workbook.xml";

/** A sheet that has a formula with a mark, and one with a table. */
const having = (words: string): string =>
  Object.keys(sample).find((path) => /^xl\/worksheets\/\w+\.xml$/.test(path) && textAt(path).includes(words)) as string;
const textAt = (path: string): string => strFromU8(sample[path] as Uint8Array);

function spoiled(path: string, from: string | RegExp, to: string): string[] {
  const before = textAt(path);
  const after = before.replace(from, to);
  expect(after).not.toBe(before);
  return faultsOf(zipSync({ ...sample, [path]: strToU8(after) }));
}

describe("the faults of a package", () => {
  it("are none in a sample", () => {
    expect(faultsOf(zipSync(sample))).toEqual([]);
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
  ])("are found: %s", (_, path, from, to, fault) => {
    expect(spoiled(path, from, to).join("\n")).toMatch(fault);
  });
});
