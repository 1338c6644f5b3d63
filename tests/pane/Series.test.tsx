// @vitest-environment happy-dom
import { describe, expect, it } from "vitest";
import { readTable } from "../../src/runsheet/tables/readTables";
import { matchColumns } from "../../src/runsheet/tables/registry";
import type { Addition, NewRows } from "../../src/sheet/addition";
import type { CellValue, Content, Sheet } from "../../src/sheet/sheet";
import { FakeHost } from "./fakeHost";
import { openPane } from "./openPane";

const heldBy = (content: Content | null | undefined): CellValue =>
  !content || "formula" in content ? null : "text" in content ? content.text : content.number;

/** Takes what is added as a spreadsheet does: new tables and rows are there afterwards. */
class SeriesHost extends FakeHost {
  readonly steps: (readonly Addition[])[] = [];
  refusal: Error | undefined;

  override async append(additions: readonly Addition[]) {
    if (this.refusal) throw this.refusal;
    this.steps.push(additions);
    for (const one of additions) {
      if ("table" in one) this.#rows(one);
      else this.#sheet(one);
    }
  }

  #rows({ table, headings, rows }: NewRows) {
    const all = this.all[table] as CellValue[][];
    const own = (all[0] ?? []).map((heading) => headings.indexOf(String(heading)));
    all.push(...rows.map((row) => own.map((at) => heldBy(row[at]))));
  }

  #sheet(sheet: Sheet) {
    this.added.push(sheet);
    for (const { name, headings, rows } of sheet.tables ?? []) {
      const at = (row: number, column: number) =>
        heldBy(sheet.cells.find((cell) => cell.row === row && cell.column === column)?.content);
      this.all[name] = [
        [...headings],
        ...Array.from({ length: rows }, (_, r) => headings.map((_, column) => at(r + 1, column))),
      ];
    }
  }

  /** The tests of the workbook, as the tool itself reads them. */
  tests(table = "BurnTests") {
    const [headings = [], ...rows] = this.all[table] ?? [];
    const names = headings.map(String);
    const read = readTable(
      { type: "burnTests", headings: names, rows, columns: matchColumns("burnTests", names) },
      "g",
    );
    return [...(read?.values() ?? [])];
  }
}

/** Invented; 100 g of water with the usual factor, 0.86, are 86 g of fill. */
const VESSELS: CellValue[][] = [
  ["Vessel", "Water weight (g)", "Wick"],
  ["Bowl", 100, "Size 5"],
];
const SCENTS: CellValue[][] = [
  ["Scent", "Load (%)", "Wax maximum (%)", "Product limit (%)", "Add at (C)", "Flash point (C)", "Cure days"],
  ["Rain", 0.06, 0.1, 0.08, 65, 93, 14],
];
const ITEMS: CellValue[][] = [
  ["Item", "Kind", "On hand"],
  ["Wax", "wax", 500],
  ["Rain", "scent", 100],
  ["Bowl", "vessel", 10],
  ["Size 4", "wick", 20],
  ["Size 6", "wick", 2],
];
const workbook = () => new SeriesHost({ Vessels: VESSELS, Scents: SCENTS, Items: ITEMS });
const SERIES = {
  Vessel: "bowl",
  "Inside width": "72.5",
  "Scent (blank: none)": "rain",
  "Wicks to try, one a line or parted by commas": "Size 4\nsize 6",
};

describe("planning a series", () => {
  const { show, changed, type, press, field, section, shown, beside, done, alert, offered, seeAll } = openPane(
    "pane-series",
    "tests",
  );
  const typed = async (texts: Readonly<Record<string, string>>) => {
    await type(texts);
    // The plan is worked out beside the page.
    await changed({ changed: () => undefined });
  };

  it("shows what the series takes, and writes tests, readings and cards in one step", async () => {
    const host = workbook();
    await show(host);
    await typed(SERIES);
    expect([field("Code of the series").value, field("Cure days").value, field("Load (of wax)").value]).toEqual([
      "S1",
      "14",
      "6%",
    ]);
    // By hand: 6 x 86 = 516 g poured and 3 % more melted, 531.48, weighed out in whole grams; of 1.06 parts 1 is wax.
    expect(shown()).toEqual([
      "6 candles, 3 of each of 2 wicks: S1-1 to S1-6",
      "Wax 501 g, scent 30 g at 6 % of wax, in 1 pot",
      "48 hours to stay with burning candles (144 candle hours), on 6 days, two cycles a day",
      "Poured on 2026-11-26, first burn on 2026-12-10, last on 2026-12-15",
      "Wax: 1 g missing, no pack known",
      "Size 6: 1 missing, no pack known",
    ]);
    await press("Write the series");
    expect(host.steps).toHaveLength(1);
    expect(host.steps[0]?.map((one) => ("table" in one ? one.table : one.name))).toEqual([
      "Burn tests",
      "Readings",
      "Cards S1",
    ]);
    expect(done()).toBe(
      "Series S1 is written: 6 rows in BurnTests, 180 rows in Readings, and 6 cards to print on the sheet Cards S1.",
    );
    const tests = host.tests();
    expect(tests.map(({ test }) => test)).toEqual(["S1-1", "S1-2", "S1-3", "S1-4", "S1-5", "S1-6"]);
    expect(tests.map(({ wick }) => wick).sort()).toEqual(["Size 4", "Size 4", "Size 4", "Size 6", "Size 6", "Size 6"]);
    for (const test of tests) {
      const { vessel, width, wax, scent, load, basis, cureDays, product } = test;
      expect({ vessel, width, wax, scent, load, basis, cureDays, product }).toEqual({
        ...{ vessel: "Bowl", width: 72.5, wax: "", scent: "Rain", load: 0.06, basis: "of wax", cureDays: 14 },
        product: "container",
      });
    }
  });

  it("never gives a name twice: a second press writes nothing until another series is typed, under the next code", async () => {
    const host = workbook();
    await show(host);
    await typed(SERIES);
    await press("Write the series");
    await press("Write the series");
    expect(host.steps).toHaveLength(1);
    expect(beside("Vessel")).toBe("nothing is given; choose the vessel to try wicks in");
    await typed({ ...SERIES, "Code of the series": "s1" });
    expect(beside("Code of the series")).toBe("S1-1 is a test already; write another code, such as S2");
    await press("Write the series");
    expect(host.steps).toHaveLength(1);
    await typed({ "Code of the series": "S2" });
    // The width of the vessel is known by now.
    await press("Write the series");
    expect(host.steps).toHaveLength(2);
    const names = host.tests().map(({ test }) => test);
    expect(new Set(names).size).toBe(12);
    expect(names).toHaveLength(12);
  });

  it("takes up the maker's own table, in its units, and counts on behind its tests", async () => {
    const own: CellValue[][] = [
      ["Burn test", "Jar", "Inside diameter (in)", "Wick size", "My notes"],
      ["S7-1", "Bowl", 3, "Size 3", "old"],
      ["mine", "Cup", 2, "Size 3", null],
    ];
    const host = new SeriesHost({ Vessels: VESSELS, BurnTests: own });
    await show(host);
    await typed({ Vessel: "Bowl", "Wicks to try, one a line or parted by commas": "Size 4", "Cure days": "0" });
    // 3 in are 76.2 mm.
    expect([field("Code of the series").value, field("Inside width").value]).toEqual(["S8", "76.2"]);
    await press("Write anyway");
    expect(host.all.BurnTests?.slice(3)).toEqual(
      ["S8-1", "S8-2", "S8-3"].map((test) => [test, "Bowl", 3, "Size 4", null]),
    );
  });

  it("says what the maker's own table has no column for, and begins no tea lights that would not be known there", async () => {
    const own: CellValue[][] = [
      ["Burn test", "Jar", "Wick size"],
      ["S1-1", "Bowl", "Size 3"],
    ];
    const host = new SeriesHost({ Vessels: VESSELS, Scents: SCENTS, BurnTests: own });
    await show(host);
    await typed(SERIES);
    expect(section().textContent).toContain(
      "BurnTests has no column for Inside width, Scent and Load: what is written here of it will not be known when the tests are read",
    );
    await typed({ Product: "tea light" });
    expect(section().textContent).toContain("BurnTests has no column for Product: its tea lights would be held to");
    await press("Write the series");
    expect(host.steps).toEqual([]);
  });

  it("says beside each field what is wrong with it, what is missing only at the press, and writes nothing", async () => {
    const host = workbook();
    await show(host);
    expect(section().querySelectorAll("[role=alert]")).toHaveLength(0);
    await typed({
      "Candles of each wick": "2.5",
      "Inside width": "wide",
      "Cycles to begin with": "0",
      "Load (of wax)": "6",
    });
    expect(beside("Candles of each wick")).toBe("2.5 is no whole number from 1 to 50; write one");
    expect(beside("Inside width")).toBe('"wide" is not a number');
    expect(beside("Cycles to begin with")).toBe("0 is no whole number from 1 to 60; write one");
    expect(beside("Load (of wax)")).toBe("6 means 600 %; write 6% or 0.06");
    expect(beside("Vessel")).toBeUndefined();
    await press("Write the series");
    expect(beside("Vessel")).toBe("nothing is given; choose the vessel to try wicks in");
    expect(beside("Wicks to try, one a line or parted by commas")).toBe("nothing is given; name the wicks to try");
    expect(beside("Cure days")).toBe("write a number");
    expect(host.steps).toEqual([]);
  });

  it("asks first about few candles, names that no table knows, and a vessel whose width is not written", async () => {
    const host = workbook();
    await show(host);
    await typed({ ...SERIES, Vessel: "Bowel", "Inside width": "", "Candles of each wick": "1" });
    expect(shown()).toEqual([
      "2 candles, 1 of each of 2 wicks: S1-1 to S1-2",
      "Wax and scent: not known, for Bowel has no water weight in the table of vessels; the load is 6 % of wax",
      expect.stringMatching(/^24 hours/),
      expect.stringMatching(/^Poured on/),
      "Not checked, for nobody wrote what is on hand: Bowel",
      // One without a fault: 1 - 0.05 = 0.95; three: 1 - 0.05 ^ (1 / 3) = 0.6316.
      "1 candle of a wick says little: without a fault it leaves a fault rate of up to 95 % possible, 3 of up to 64 %. 3 or more are advised",
      "no inside width is written: without it nobody can say how much of the vessel the melt pool covers",
      "Bowel stands in no table: is it Bowl, or new?",
    ]);
    await typed({ Vessel: "Cauldron" });
    expect(shown().at(-1)).toBe("Cauldron stands in no table: is it spelt as there, or new?");
    await typed({ Vessel: "Bowel" });
    await press("Write anyway");
    expect(host.tests()).toHaveLength(2);
  });

  it("asks whether wicks are one whose names are nearly alike: two that are typed, or one that the tables know", async () => {
    await show(workbook());
    const asked = () => shown().filter((line) => line?.includes("one wick, or"));
    await typed({ ...SERIES, "Wicks to try, one a line or parted by commas": "w21\nW-21" });
    expect(asked()).toEqual(["w21 and W-21: one wick, or two? Write it as the tables do if it is one."]);
    await typed({ "Wicks to try, one a line or parted by commas": "W-21\nSize-6" });
    expect(asked()).toEqual(["Size-6 and Size 6: one wick, or two? Write it as the tables do if it is one."]);
    await typed({ "Wicks to try, one a line or parted by commas": "W-21\nsize 6" });
    expect(asked()).toEqual([]);
  });

  it("refuses a load over the limit of the scent", async () => {
    const host = workbook();
    await show(host);
    await typed({ ...SERIES, "Load (of wax)": "10%" });
    expect(section().textContent).toMatch(/over the product limit/i);
    await press("Write the series");
    expect(host.steps).toEqual([]);
  });

  it("takes words that say that there is no scent for none, and gives it no load", async () => {
    const host = workbook();
    await show(host);
    const heading = "Load (of wax)";
    await typed({ ...SERIES, "Scent (blank: none)": "Unscented", "Cure days": "3" });
    expect(field(heading).value).toBe("");
    await press("Write the series");
    expect(host.tests()[0]).toMatchObject({ scent: "", load: undefined });
    await show(workbook());
    await typed({ ...SERIES, "Scent (blank: none)": "none", "Cure days": "3", [heading]: "6%" });
    expect(section().textContent).toContain("is given and no scent; name the scent, or clear the load");
  });

  it("leaves the load to a recipe that makes it, and says so where another one is typed", async () => {
    const host = workbook();
    host.all.Recipes = [
      ["Scent", "Ingredient", "Share", "Basis"],
      ["Rain", "Soft wax", 3, "part"],
      ["Rain", "Hard wax", 1, "part"],
      ["Rain", "Rain", 0.05, "of wax"],
    ];
    await show(host);
    await typed(SERIES);
    expect(field("Load (of wax)").value).toBe("");
    expect(shown()[1]).toMatch(/at 5 % of wax/);
    await typed({ "Load (of wax)": "6%" });
    expect(shown()).toContain("Rain: its recipe makes 5 % of wax; the load of 6 % of wax is not used");
    await press("Write anyway");
    // As a run of it is asked about: whether its wax and load were tested.
    expect(host.tests()[0]).toMatchObject({ wax: "Soft wax and Hard wax", load: expect.closeTo(0.05, 12) });
  });

  it("loses nothing of what was typed when the spreadsheet refuses", async () => {
    const host = workbook();
    await show(host);
    await typed(SERIES);
    host.refusal = new Error("Excel is busy. Try again.");
    await press("Write the series");
    expect(alert()).toBe("Excel is busy. Try again.");
    expect(field("Vessel").value).toBe("bowl");
    expect(host.all.BurnTests).toBeUndefined();
    host.refusal = undefined;
    await press("Write the series");
    expect(host.tests()).toHaveLength(6);
  });

  it("writes nothing that was not shown: tests that came in meanwhile", async () => {
    const host = workbook();
    await show(host);
    await typed(SERIES);
    host.all.BurnTests = [
      ["Test", "Vessel", "Wick"],
      ["S1-1", "Cup", "Size 3"],
    ];
    await press("Write the series");
    expect(host.steps).toEqual([]);
    expect(done()).toMatch(/^The tables have changed/);
  });

  it("adds nothing to a table that lacks a column or has rows below it, and says why", async () => {
    const host = workbook();
    host.all.BurnTests = [
      ["Test", "Vessel"],
      ["A", "Bowl"],
    ];
    await show(host);
    expect(section().textContent).toContain("BurnTests has no column for Wick.");
    host.all.BurnTests = [
      ["Test", "Vessel", "Wick"],
      ["A", "Bowl", "Size 3"],
    ];
    host.below = 1;
    await changed(host);
    expect(section().textContent).toContain("1 row right below BurnTests is no part of it");
    await typed(SERIES);
    await press("Write the series");
    expect(host.steps).toEqual([]);
  });

  it("offers the vessels, scents and wicks that are known, each wick until it is chosen", async () => {
    await show(workbook());
    expect(offered("Vessel")).toEqual(["Bowl"]);
    expect(offered("Scent (blank: none)")).toEqual(["Rain"]);
    const wicks = (off: boolean) =>
      seeAll(`[aria-labelledby=pane-series] button[aria-disabled=${off}]`).flatMap(({ textContent }) =>
        textContent?.startsWith("Add ") ? [textContent] : [],
      );
    expect(wicks(false)).toEqual(["Add Size 4", "Add Size 5", "Add Size 6"]);
    await press("Add Size 6");
    await press("Add Size 4");
    expect(field("Wicks to try, one a line or parted by commas").value).toBe("Size 6\nSize 4");
    // They stay where they are: a button that went would drop the keyboard's focus.
    expect([wicks(false), wicks(true)]).toEqual([["Add Size 5"], ["Add Size 4", "Add Size 6"]]);
  });
});
