import { beforeAll, describe, expect, it } from "vitest";
import { flameCheck } from "../../src/core/burn/flameCheck";
import { poolCheck } from "../../src/core/burn/poolCheck";
import { netCheck } from "../../src/core/label/netCheck";
import { heightOf, widthsOf } from "../../src/host/univer/layout";
import { burnTests } from "../../src/samples/burnTests";
import { plotsOf } from "../../src/sheet/chart/data";
import type { Sheet } from "../../src/sheet/sheet";
import { linesOf } from "../../src/sheet/textLines";
import { byName, number, type Row, SavedBook, text, withEdits } from "./saved";

/** The saved values of the workbook, read back, against the core functions and against figures worked out by hand. */

let book: SavedBook;
beforeAll(async () => {
  book = await SavedBook.open("3-burn-tests.xlsx");
});

const all = (): Row[] => book.rows("Readings", "Readings");
const readings = (): Row[] => all().filter(({ Test }) => Test !== null);
const tests = (): Row[] => book.rows("Tests", "Tests").filter(({ Test }) => Test !== null);
const ofTest = (name: unknown): Row[] => readings().filter(({ Test }) => Test === name);

/** The slope of a line by the means, written out here. */
function slope(points: readonly (readonly [number, number])[]): number {
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  const [x, y] = [mean(points.map(([a]) => a)), mean(points.map(([, b]) => b))];
  const up = points.reduce((sum, [a, b]) => sum + (a - x) * (b - y), 0);
  return up / points.reduce((sum, [a]) => sum + (a - x) ** 2, 0);
}

describe("the readings", () => {
  it("are taken in cycles of 240 minutes, hours counted through", () => {
    // EN 15426: cycles of 240 minutes (second-hand).
    expect(book.saved("Readings", "B4")).toBe(240);
    for (const row of readings()) {
      expect(number(row, "Minutes")).toBeLessThanOrEqual(240);
      expect(number(row, "Hours burnt")).toBeCloseTo((number(row, "Cycle") - 1) * 4 + number(row, "Minutes") / 60, 12);
    }
    for (const { Test } of tests()) {
      const hours = ofTest(Test).map((row) => number(row, "Hours burnt"));
      expect(hours[0]).toBe(0);
      expect(Math.max(...hours)).toBe(20);
      expect(hours).toEqual([...hours].sort((a, b) => a - b));
    }
  });

  it("say what is wrong with a flame and a pool, and nothing where nothing was seen", () => {
    for (const row of readings()) {
      const width = number(byName(tests(), "Test", row.Test), "Inside width (cm)");
      const remarks = [
        ...(row["Flame (mm)"] === null ? [] : [flameCheck(number(row, "Flame (mm)"), "mm")]),
        ...(row["Pool (cm)"] === null
          ? []
          : [poolCheck(number(row, "Pool (cm)"), width, number(row, "Minutes") / 60, "cm")]),
      ];
      expect(row.Remarks).toBe(remarks.filter((remark) => remark !== "").join("; "));
    }
  });

  it("hold a flame too high, a pool ahead and a pool behind", () => {
    const remarks = readings().map((row) => text(row, "Remarks"));
    // 75 mm: EN 15493 (second-hand). An hour an inch: common practice.
    expect(remarks.filter((remark) => /flame (78|81) mm high, at most 75 mm/.test(remark))).toHaveLength(2);
    expect(remarks.some((remark) => remark.startsWith("pool ahead"))).toBe(true);
    expect(remarks.some((remark) => remark.startsWith("pool behind"))).toBe(true);
  });

  it("leave room for a remark on a flame and a pool at once, in each row of the file and of the embedded sheet", () => {
    const remark = `${flameCheck(82, "mm")}; ${poolCheck(3.5, 7.6, 2, "cm")}`;
    const page = book.page("Readings");
    // In print and on screen a bold letter takes up to 1.1 digits, of which a width counts so many.
    const lines = linesOf(remark, (page.getColumn(8).width ?? 0) / 1.1);
    expect(lines).toBeGreaterThan(1);
    const sheet = burnTests().find(({ name }) => name === "Readings") as Sheet;
    for (const i of all().keys()) {
      // A line of 11 points takes 15 points in Excel (its own height of a row), and 18 pixels in the embedded sheet.
      expect(page.getRow(7 + i).height).toBeCloseTo(lines * 15, 9);
      expect(page.getCell(7 + i, 8).alignment.vertical).toBe(page.getCell(7 + i, 1).alignment.vertical);
      const cells = sheet.cells.filter(({ row }) => row === 6 + i);
      const heights = cells.map((cell) => heightOf(cell, sheet, widthsOf(sheet)));
      expect(Math.max(...heights)).toBeGreaterThanOrEqual(lines * 18);
    }
  });

  it("leave free rows blank", () => {
    const free = all().filter(({ Test }) => Test === null);
    expect(free.length).toBeGreaterThan(0);
    for (const row of free) expect([row["Hours burnt"], row.Remarks]).toEqual(["", ""]);
  });
});

describe("the tests", () => {
  it("have a rate by least squares over their weighings, and hours from it", () => {
    for (const row of tests()) {
      const weighed = ofTest(row.Test).filter((one) => one["Weight (g)"] !== null);
      expect(weighed).toHaveLength(6);
      const rate = -slope(weighed.map((one) => [number(one, "Hours burnt"), number(one, "Weight (g)")]));
      expect(number(row, "Burn rate (g/h)")).toBeCloseTo(rate, 10);
      expect(number(row, "Burns for (h)")).toBeCloseTo((number(row, "Wax (g)") * 0.9) / rate, 8);
      expect(number(row, "Pool to wall (h)")).toBeCloseTo(number(row, "Inside width (cm)") / 2.54, 12);
    }
  });

  it("count their remarks, name their highest flame and give a verdict", () => {
    for (const row of tests()) {
      const own = ofTest(row.Test);
      const remarks = own.filter(({ Remarks }) => Remarks !== "").length;
      expect(row.Remarks).toBe(remarks);
      expect(row["Highest flame (mm)"]).toBe(Math.max(...own.map((one) => Number(one["Flame (mm)"] ?? 0))));
      expect(row.Verdict).toBe(remarks === 0 ? "nothing to remark so far" : "see the remarks in Readings");
    }
    expect(new Set(tests().map(({ Verdict }) => Verdict)).size).toBe(2);
  });

  it("leave the free row blank", () => {
    const { Test: _, ...rest } = byName(book.rows("Tests", "Tests"), "Test", null);
    expect(Object.values(rest).filter((value) => value !== null && value !== "")).toEqual([]);
  });
});

describe("the net weights", () => {
  const nets = (): number[] =>
    book
      .rows("Net weight", "Weighed")
      .filter((row) => row["Full (g)"] !== null)
      .map((row) => number(row, "Full (g)") - number(row, "Empty (g)"));

  it.each([
    [8, "us"],
    [9, "eu"],
  ])("in row %i are checked by the rule %s", (row, rule) => {
    const { verdict, meanError, meanLimit, allowedShortfall, numberShort } = netCheck(216, nets(), "g", rule, 60);
    const read = ["G", "H", "I", "J", "K"].map((letter) => book.saved("Net weight", `${letter}${row}`));
    expect([read[0], read[3], read[4]]).toEqual([verdict, allowedShortfall, numberShort]);
    expect(Number(read[1])).toBeCloseTo(meanError, 10);
    expect(Number(read[2])).toBeCloseTo(meanLimit, 10);
  });

  it("pass where a dozen of sixty is a plan, and are too few where each must be weighed", () => {
    expect(nets()).toHaveLength(12);
    expect(book.saved("Net weight", "G8")).toBe("passes");
    expect(book.saved("Net weight", "G9")).toBe("not enough weighed: 12, the plan asks for 60");
    // Handbook 133, Table 2-5 (from memory): 12.7 g for 209 to 263 g. 76/211/EEC: 9 g for 200 to 300 g.
    expect([book.saved("Net weight", "J8"), book.saved("Net weight", "J9")]).toEqual([12.7, 9]);
  });
});

describe("the first sheet", () => {
  it("says that all is invented, and defers to the laboratory", () => {
    const words = book.words("Read me");
    for (const word of [
      "invented",
      "burn-test laboratory",
      "EN 15426",
      "240 minutes",
      "at least 60",
      "Never leave",
      "#NAME?",
    ]) {
      expect(words).toContain(word);
    }
  });
});

describe("a change", () => {
  it("of a weight moves the rate and the hours of its test alone", async () => {
    const last = readings().findIndex((row) => row.Test === "A" && row["Hours burnt"] === 20);
    const valueAt = await withEdits(burnTests(), { [`Readings!D${7 + last}`]: 400 });
    const weighed = ofTest("A").filter((row) => row["Weight (g)"] !== null);
    const points = weighed.map(
      (row, i) => [number(row, "Hours burnt"), i === 5 ? 400 : number(row, "Weight (g)")] as const,
    );
    expect(Number(valueAt("Tests", "F7"))).toBeCloseTo(-slope(points), 10);
    expect(Number(valueAt("Tests", "G7"))).toBeCloseTo((216 * 0.9) / -slope(points), 8);
    expect(valueAt("Tests", "F8")).toBe(book.saved("Tests", "F8"));
  });

  it("of a flame is remarked on and counted", async () => {
    const valueAt = await withEdits(burnTests(), { "Readings!E10": 90 });
    expect(valueAt("Readings", "H10")).toBe(flameCheck(90, "mm"));
    expect([valueAt("Tests", "I7"), valueAt("Tests", "J7"), valueAt("Tests", "K7")]).toEqual([
      90,
      1,
      "see the remarks in Readings",
    ]);
  });

  it("that tells of a flame and a pool at once joins both", async () => {
    const valueAt = await withEdits(burnTests(), { "Readings!E16": 80 });
    expect(valueAt("Readings", "H16")).toBe(`${flameCheck(80, "mm")}; ${poolCheck(4.3, 7.4, 1, "cm")}`);
  });
});

describe("the chart", () => {
  const [chart] = burnTests().flatMap(({ charts = [] }) => charts);
  const plotsWith = async (edits: Record<string, number | string>) => {
    if (!chart) throw new Error("no chart");
    const valueAt = await withEdits(burnTests(), edits);
    return plotsOf(chart, (sheet, row, column) => valueAt(sheet, `${String.fromCharCode(65 + column)}${row + 1}`));
  };
  const FREE_TEST = 12;
  const FREE_READING = 47;

  it("draws the weighings of each test, and leaves free places out", async () => {
    const plots = await plotsWith({});
    expect(plots.map(({ name }) => name)).toEqual(
      tests().map((row) => `${row.Test}: ${row.Vessel}, ${text(row, "Wick").toLowerCase()}`),
    );
    for (const [i, { Test }] of tests().entries()) {
      const weighed = ofTest(Test).filter((row) => row["Weight (g)"] !== null);
      expect(plots[i]?.points).toEqual(weighed.map((row) => ({ x: row["Hours burnt"], y: row["Weight (g)"] })));
    }
  });

  it("draws a sixth test as soon as it is filled in", async () => {
    expect(book.saved("Tests", `A${FREE_TEST}`)).toBeNull();
    expect(book.saved("Readings", `A${FREE_READING}`)).toBeNull();
    const row = (at: number, minutes: number, weight: number) => ({
      [`Readings!A${at}`]: "F",
      [`Readings!B${at}`]: 1,
      [`Readings!C${at}`]: minutes,
      [`Readings!D${at}`]: weight,
    });
    const plots = await plotsWith({
      [`Tests!A${FREE_TEST}`]: "F",
      [`Tests!B${FREE_TEST}`]: "Small tin",
      [`Tests!D${FREE_TEST}`]: "Cotton, size 2",
      ...row(FREE_READING, 0, 150),
      ...row(FREE_READING + 1, 240, 138),
    });
    expect(plots.at(-1)).toEqual({
      name: "F: Small tin, cotton, size 2",
      points: [
        { x: 0, y: 150 },
        { x: 4, y: 138 },
      ],
    });
  });

  it("draws a reading that is added at the bottom, and calls a line what its test is called", async () => {
    const plots = await plotsWith({
      [`Readings!A${FREE_READING}`]: "A",
      [`Readings!B${FREE_READING}`]: 6,
      [`Readings!C${FREE_READING}`]: 240,
      [`Readings!D${FREE_READING}`]: 396,
      "Tests!B7": "Footed bowl",
    });
    expect(plots[0]?.name).toMatch(/^A: Footed bowl/);
    expect(plots[0]?.points.at(-1)).toEqual({ x: 24, y: 396 });
    expect(plots).toHaveLength(5);
  });

  it("takes whole columns of the table, which Excel draws on when rows are added, and numbers for all hours", () => {
    const [table] = burnTests().find(({ name }) => name === "Readings")?.tables ?? [];
    for (const { x, y } of chart?.series ?? []) {
      for (const { row, rows } of [x, y]) expect([row - 1, rows]).toEqual([table?.row, table?.rows]);
    }
    // Excel takes hours for 1, 2, 3 as soon as one of them is a text.
    for (const row of all()) expect(typeof row["Hours drawn"]).toBe("number");
  });

  it("says beside the table how many tests it draws", () => {
    expect(book.words("Tests")).toContain(`the first ${chart?.series.length} tests`);
  });
});
