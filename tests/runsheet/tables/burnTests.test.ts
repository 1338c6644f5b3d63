import { describe, expect, it } from "vitest";
import { readTable, readTables } from "../../../src/runsheet/tables/readTables";
import { matchColumns, type TableTypeId } from "../../../src/runsheet/tables/registry";
import type { TableRows } from "../../../src/runsheet/tables/tableRows";
import type { CellValue } from "../../../src/sheet/sheet";

const tableOf = <K extends TableTypeId>(type: K, headings: string[], ...rows: CellValue[][]) =>
  ({ type, headings, rows, columns: matchColumns(type, headings) }) as TableRows<K>;
const TESTS = ["Test", "Vessel", "Inside width (cm)", "Wick", "Wax", "Scent", "Load (%)", "Cure days", "Product"];
const READINGS = ["Test", "Cycle", "Minutes", "Weight (oz)", "Flame (in)", "Pool (cm)", "Wax left (mm)", "Soot"];

describe("the table of burn tests", () => {
  it("gives each candle by its name, its width in mm", () => {
    const read = readTable(
      tableOf("burnTests", TESTS, ["T-1", "Bowl", 7.5, "Size 6", "Soft wax", "Rain", 0.06, 14], ["T-2", "Cup", 4, "1"]),
      "g",
    );
    expect(read?.get("t-1")).toMatchObject({
      ...{ row: 0, test: "T-1", vessel: "Bowl", width: 75, wick: "Size 6", wax: "Soft wax", scent: "Rain" },
      ...{ load: 0.06, cureDays: 14, product: "container", wrong: [] },
    });
    expect(read?.get("t-2")).toMatchObject({ width: 40, load: undefined, cureDays: undefined });
  });

  it("says what it cannot read beside its cell, and takes nothing for it", () => {
    const row = ["T-1", "Bowl", "7,5", "Size 6", "", "", 6, 1.5];
    const test = readTable(tableOf("burnTests", TESTS, row, ["t-1", "Cup", 4, "1"]), "g")?.get("t-1");
    expect(test).toMatchObject({ vessel: "Bowl", width: undefined, load: undefined, cureDays: undefined });
    expect(test?.wrong.map(({ field, text }) => `${field}: ${text.split(";")[0]}`)).toEqual([
      'width: Inside width: "7,5" is text: write 7.5, with the decimal sign of your spreadsheet',
      "load: Load: 6 means 600 %",
      "cure: Cure days: 1.5 is no number of days",
      "test: t-1 stands twice",
    ]);
  });

  it("has no scent where its words say so, and then no load", () => {
    const headings = ["Test", "Vessel", "Wick", "Scent", "Load"];
    const rows: CellValue[][] = [
      ["T-1", "Bowl", "Size 6", "Unscented"],
      ["T-2", "Bowl", "Size 6", "-", 0],
      ["T-3", "Bowl", "Size 6", "none", 0.06],
    ];
    const read = readTable(tableOf("burnTests", headings, ...rows), "g");
    expect(read?.get("t-1")).toMatchObject({ scent: "", load: undefined, wrong: [] });
    expect(read?.get("t-2")).toMatchObject({ scent: "", load: 0, wrong: [] });
    expect(read?.get("t-3")).toMatchObject({ scent: "", load: undefined });
    expect(read?.get("t-3")?.wrong.map(({ text }) => text)).toEqual([
      'Load: the scent is "none" and has a load; name the scent, or write 0 %',
    ]);
  });

  it("takes no width whose unit is not said", () => {
    const headings = ["Test", "Vessel", "Wick", "Inside width"];
    const test = readTable(tableOf("burnTests", headings, ["T-1", "Bowl", "6", 75]), "g")?.get("t-1");
    expect(test?.width).toBeUndefined();
    expect(test?.wrong[0]?.text).toBe(
      "Inside width: the heading Inside width names no unit of length; write mm, cm or in in its brackets",
    );
  });
});

describe("the table of readings", () => {
  it("gives what was seen of each test, in the order of the rows and in one unit", () => {
    const read = readTable(
      tableOf("readings", READINGS, ["T-1", 1, 60, 10, 1, 2.5, 60, "none"], [" t-1", 2, 240, null, 2, 7, 9, 0.5]),
      "g",
    );
    expect(read?.get("t-1")).toMatchObject([
      { row: 0, cycle: 1, minutes: 60, flame: 25.4, pool: 25, depth: 60, soot: "none", glass: undefined },
      { row: 1, cycle: 2, minutes: 240, weight: undefined, flame: 50.8, pool: 70, depth: 9, soot: 0.5 },
    ]);
    // An ounce is 28.349523125 g (16 CFR 500.19).
    expect(read?.get("t-1")?.[0]?.weight).toBeCloseTo(283.49523125, 10);
  });

  it.each([
    ["Time (h)", "Glass temperature (F)", 1.5, 140, 90, 60],
    ["Minutes", "Glass temp C", 90, 60, 90, 60],
  ])("reads %s and %s", (time, heat, at, hot, minutes, glass) => {
    const read = readTable(tableOf("readings", ["Test", "Cycle", time, heat], ["T-1", 1, at, hot]), "g");
    expect(read?.get("t-1")?.[0]?.minutes).toBe(minutes);
    expect(read?.get("t-1")?.[0]?.glass).toBeCloseTo(glass, 10);
  });

  it("says what it cannot read in its own row only", () => {
    const headings = ["Test", "Cycle", "Minutes", "Glass temperature", "Wax left (cm)"];
    const rows: CellValue[][] = [
      ["T-1", 0, -5, 40, -1],
      ["T-1", 1, 60, null, null],
    ];
    const [bad, good] = readTable(tableOf("readings", headings, ...rows), "g")?.get("t-1") ?? [];
    expect(bad?.wrong.map(({ field }) => field)).toEqual(["cycle", "minutes", "depth", "glass"]);
    expect(bad).toMatchObject({ cycle: undefined, minutes: undefined, glass: undefined, depth: undefined });
    // As it stands in the cell, not in mm.
    expect(bad?.wrong[2]?.text).toBe("Wax left: -1 is below 0; write 0 or more");
    expect(good?.wrong).toEqual([]);
  });

  it("keeps nobody from pouring", () => {
    const pour = { type: "pour", headings: [], rows: [], columns: {} } as const;
    const readings = tableOf("readings", ["Test", "Cycle"], ["T-1", "x"]);
    const { problems } = readTables({ pour, readings }, "g");
    expect(problems.filter(({ table }) => table === "readings")).toMatchObject([{ severity: "warning" }]);
  });
});
