import { describe, expect, it } from "vitest";
import { seriesOf } from "../../../src/runsheet/series/readSeries";
import { seenSheet } from "../../../src/runsheet/series/seenSheet";
import type { Standing } from "../../../src/runsheet/series/seriesAdditions";
import type { BurnTest } from "../../../src/runsheet/tables/burnTests";
import { readTable } from "../../../src/runsheet/tables/readTables";
import { matchColumns } from "../../../src/runsheet/tables/registry";
import type { CellValue } from "../../../src/sheet/sheet";
import { pictured } from "../pictured";

function tableOn<K extends "burnTests" | "readings">(type: K, name: string, headings: string[], rows: CellValue[][]) {
  return { type, name, headings, rows, columns: matchColumns(type, headings) } as unknown as Standing<K>;
}

const HEADINGS = ["Test", "Vessel", "Inside width (mm)", "Wick", "Wax", "Scent", "Load (% of wax)", "Cure days"];
const LOOKS = ["Test", "Cycle", "Minutes", "Weight (g)", "Flame (mm)", "Pool (mm)", "Wax left (mm)", "Soot"];
/** Two candles of one wick, invented. */
const ROWS: CellValue[][] = ["A", "B"].map((test) => [test, "Bowl", 70, "Size 6", "Soft wax", "Rain", 0.06, 14]);

function sheetOf(headings = HEADINGS, rows = ROWS, looks = LOOKS, names = ["Burns", "Looks"]) {
  const burnTests = tableOn("burnTests", names[0] as string, headings, rows);
  const readings = tableOn("readings", names[1] as string, looks, []);
  const [tests = []] = seriesOf(readTable(burnTests, "g") ?? new Map<string, BurnTest>());
  const series = { name: "Bowl, Soft wax", tests, wicks: 1, fill: 180.5 };
  return seenSheet(series, { burnTests, readings }, { paper: "a4", unit: "g", today: 46352 });
}

const HOURS = [1, 2, 3, 4];

describe("the sheet of a series on paper", () => {
  it("says which candles it shows and what it follows, then each wick, then each candle, with room for more", () => {
    const wick = [
      ...["name: =", "body center: =", "body right: = {0%}", ...Array(3).fill("body right: = {0.00}")],
      ...["body right: = {0.0}", ...Array(4).fill("body center: ="), "name center: =", "body center: = {0.0}"],
      ...["body center: =", "body: ="],
    ].join(" | ");
    const candle = [
      ...[
        "label: =",
        "name: =",
        "body right: = {0.0}",
        "body right: = {0.00}",
        ...Array(3).fill("body right: = {0.0}"),
      ],
      ...[...Array(4).fill("body center: = {0%}"), "name center: =", "body center: = {0.0}"],
      ...["body center: =", "body: ="],
    ].join(" | ");
    const headings = ([first, ...others]: string[]) =>
      [`heading: ${first}`, ...others.map((text) => `heading center: ${text}`)].join(" | ");
    expect(pictured(sheetOf())).toEqual([
      "title: Series: Bowl, Soft wax",
      "note > 15: Written 2026-11-26 with 2 candles. It follows the tables Burns and Looks: a reading that is changed or added shows here. It has room for 8 candles and 3 wicks. Written again, it stands on a new sheet; this one stays.",
      "label: Vessel | input > 3 left: Bowl | label > 2: Load | input > 3 left: 0.06 {0.0#%} | label > 2: Wax and scent (g) | input left: 180.5",
      "label: Wax | input > 3 left: Soft wax | label > 2: Cure days | input > 3 left: 14",
      "label: Scent | input > 3 left: Rain | label > 2: Product | input > 3 left: container",
      "note > 15: The candles here are all rows of Burns that say the same as these cells. Wax and scent (fragrance oil) of one candle, with the rate, tell the hours until the last of the wax; a candle that is burnt until 10 mm are left tells them better.",
      ...["alert > 15: =", "alert > 15: ="],
      "heading: Wick | heading > 14: What was seen, and what would make it surer",
      // One wick was tried, and there is room for two more; for each what was seen and what would make it surer.
      ...Array(3).fill(["label: = | name > 14: =", "note > 14: ="]).flat(),
      expect.stringMatching(/^caution > 15: This says what was seen in so many candles, and nothing of those/),
      expect.stringMatching(/^caution > 15: Stay with it\. .* the flame is over 75 mm \(EN 15493\)/),
      headings([
        ...[
          "By wick",
          "Passed",
          "Pass rate of all, at least",
          "Rate (g/h)",
          "95 % from",
          "95 % to",
          "Highest flame (mm)",
        ],
        ...[...HOURS.map((hour) => `Pool at ${hour} h, of width`), "Soot", "Throw", "Burns down in", "="],
      ]),
      ...Array(3).fill(wick),
      headings([
        ...["By candle", "Wick", "Hours burnt", "Rate (g/h)", "Hours to 10 mm left", "Inside width (mm)"],
        ...["Highest flame (mm)", ...HOURS.map((hour) => `Least pool at ${hour} h`)],
        ...["Soot", "Throw", "What was seen", "Rate"],
      ]),
      ...Array(8).fill(candle),
      "heading: Candle | heading > 14: What its readings say",
      ...Array(8).fill("label: = | name > 14: ="),
    ]);
  });

  it("is named by its vessel and printed across, the candles on a page of their own", () => {
    const { name, print, cells, widths } = sheetOf();
    const candles = cells.find(({ content }) => content && "text" in content && content.text === "By candle")?.row;
    expect([name, print]).toEqual(["Series Bowl", { paper: "a4", landscape: true, newPages: [candles] }]);
    // What only formulas need is hidden, to the last column.
    expect(widths).toHaveLength(Math.max(...cells.map(({ column }) => column)) + 1);
    expect(widths.slice(15).every((width) => width === 0)).toBe(true);
  });
});

describe("a sheet of a series that cannot follow its tables", () => {
  it("says which column a table lacks, and that a range is no table", () => {
    expect(() => sheetOf(HEADINGS, ROWS, ["Test", "Minutes"])).toThrow(
      "Looks has no column for Cycle; fix the heading",
    );
    expect(() => sheetOf(HEADINGS, ROWS, LOOKS, ["Burns", ""])).toThrow("make it a table of the workbook first");
  });

  it("says which unit of length a heading lacks", () => {
    const looks = LOOKS.map((heading) => (heading === "Pool (mm)" ? "Pool" : heading));
    expect(() => sheetOf(HEADINGS, ROWS, looks)).toThrow(
      "Pool: the heading names no unit of length; write mm, cm or in",
    );
  });

  it("takes a blank product and the word that the pane writes for one", () => {
    const alike = ROWS.map((row, i) => [...row, i === 0 ? null : "container"]);
    const lines = pictured(sheetOf([...HEADINGS, "Product"], alike));
    expect(lines[1]).toMatch(/^note > 15: Written 2026-11-26 with 2 candles/);
    expect(lines[4]).toContain("input > 3 left: container");
  });
});
