import { describe, expect, it } from "vitest";
import { BURN_CAUTIONS } from "../../../src/runsheet/burnCautions";
import { cardSheet } from "../../../src/runsheet/series/cardSheet";
import { planSeries, type SeriesCandle } from "../../../src/runsheet/series/planSeries";
import { type SeriesCandles, type Standing, seriesAdditions } from "../../../src/runsheet/series/seriesAdditions";
import { readTable } from "../../../src/runsheet/tables/readTables";
import { matchColumns, type TableTypeId } from "../../../src/runsheet/tables/registry";
import type { TableRows } from "../../../src/runsheet/tables/tableRows";
import type { NewRows } from "../../../src/sheet/addition";
import type { CellValue, Content, Sheet } from "../../../src/sheet/sheet";
import { pictured } from "../pictured";

const SERIES = planSeries({
  ...{ code: "=S", vessel: "Bowl", wicks: ["Size 4", "Size 6"], candles: 2, cycles: 2, atOnce: 2 },
  ...{ pouredOn: 46352, cureDays: 7 },
});
const CANDLES: SeriesCandles = {
  ...{ vessel: "Bowl", width: 72.5, wax: "Soft wax", scent: "Rain", load: 0.06, cureDays: 7, product: "container" },
};

const SETTINGS = { unit: "g", basis: "of wax" } as const;

const heldBy = (content: Content | null | undefined): CellValue =>
  !content || "formula" in content ? null : "text" in content ? content.text : content.number;

/** A written sheet or rows for a table, as a table that is read. */
function tableOf<K extends TableTypeId>(type: K, addition: Sheet | NewRows): TableRows<K> {
  if ("table" in addition) {
    const { headings, rows } = addition;
    return { type, headings, rows: rows.map((row) => row.map(heldBy)), columns: matchColumns(type, headings) };
  }
  const [table] = addition.tables ?? [];
  const at = (row: number, column: number) =>
    heldBy(addition.cells.find((cell) => cell.row === row && cell.column === column)?.content);
  const headings = table?.headings ?? [];
  const rows = Array.from({ length: table?.rows ?? 0 }, (_, r) => headings.map((_, c) => at(r + 1, c)));
  return { type, headings, rows, columns: matchColumns(type, headings) };
}

describe("a series in the workbook", () => {
  it("begins both tables where there are none, and is read from them as it was planned", () => {
    const [tests, looks] = seriesAdditions(SERIES, CANDLES, {}, SETTINGS) as Sheet[];
    const read = readTable(tableOf("burnTests", tests as Sheet), "g");
    expect([...(read?.values() ?? [])].map(({ test, wick }) => ({ test, wick }))).toEqual(
      SERIES.candles.map(({ test, wick }) => ({ test, wick })),
    );
    for (const test of read?.values() ?? []) {
      const { cureDays, load, product, scent, vessel, wax, width } = test;
      expect({ cureDays, load, product, scent, vessel, wax, width }).toEqual(CANDLES);
      expect(test.wrong).toEqual([]);
    }
    const readings = readTable(tableOf("readings", looks as Sheet), "g");
    expect(readings?.get("=s-1")?.map(({ cycle, minutes }) => [cycle, minutes])).toEqual(
      SERIES.looks.filter(({ test }) => test === "=S-1").map(({ cycle, minutes }) => [cycle, minutes]),
    );
    expect(readings?.get("=s-1")?.every(({ flame, pool, weight }) => !flame && !pool && !weight)).toBe(true);
  });

  it("goes below what stands in a maker's own tables, in their units, and leaves their other columns", () => {
    const headings = ["Burn test", "Jar", "Inside diameter (in)", "Wick size", "My notes"];
    const own = {
      ...tableOf("burnTests", { table: "Mine", headings, rows: [] }),
      name: "Mine",
    } as Standing<"burnTests">;
    const [added] = seriesAdditions(SERIES, CANDLES, { burnTests: own }, SETTINGS) as [NewRows];
    expect(added.table).toBe("Mine");
    expect([...added.headings].sort()).toEqual(["Burn test", "Inside diameter (in)", "Jar", "Wick size"]);
    // 72.5 mm are 2.8543 in.
    expect(readTable(tableOf("burnTests", added), "g")?.get("=s-1")?.width).toBeCloseTo(72.5, 9);
  });

  it("gives a load on the basis of its heading, else on the usual one, and a new table says of wax", () => {
    const loadUnder = (heading: string, basis: "of wax" | "of total") => {
      const headings = ["Test", "Vessel", "Wick", heading];
      const own = {
        ...tableOf("burnTests", { table: "Own", headings, rows: [] }),
        name: "Own",
      } as Standing<"burnTests">;
      const [added] = seriesAdditions(SERIES, CANDLES, { burnTests: own }, { unit: "g", basis }) as [NewRows];
      return heldBy(added.rows[0]?.[added.headings.indexOf(heading)]);
    };
    expect(loadUnder("Load of wax", "of total")).toBe(0.06);
    // 6 in 106: by hand.
    expect(loadUnder("Load of total", "of wax")).toBeCloseTo(6 / 106, 11);
    expect(loadUnder("Load", "of total")).toBeCloseTo(6 / 106, 11);
    expect(loadUnder("Load", "of wax")).toBe(0.06);
    const [begun] = seriesAdditions(SERIES, CANDLES, {}, { unit: "g", basis: "of total" }) as [Sheet];
    expect(readTable(tableOf("burnTests", begun), "g")?.get("=s-1")).toMatchObject({ load: 0.06, basis: "of wax" });
  });

  it("writes no width under a heading whose unit nobody knows", () => {
    const headings = ["Test", "Vessel", "Wick", "Inside width"];
    const own = { ...tableOf("burnTests", { table: "Own", headings, rows: [] }), name: "Own" } as Standing<"burnTests">;
    expect(() => seriesAdditions(SERIES, CANDLES, { burnTests: own }, SETTINGS)).toThrow(
      "width: the heading Inside width names no unit of length",
    );
  });
});

describe("the cards of a series", () => {
  const sheet = cardSheet(SERIES, CANDLES, { code: "=S", paper: "a4", unit: "g" });
  const texts = sheet.cells.flatMap(({ content }) => (content && "text" in content ? [content.text] : []));

  it("are one a candle, each on a page of its own, with a line for each look", () => {
    expect(texts.filter((text) => text.startsWith("Burn test "))).toEqual(
      SERIES.candles.map(({ test }) => `Burn test ${test}`),
    );
    expect(sheet.print?.newPages).toHaveLength(SERIES.candles.length - 1);
    const numbers = sheet.cells.filter(({ content, column }) => column === 1 && content && "number" in content);
    expect(numbers).toHaveLength(SERIES.looks.length);
  });

  it("have a box for all that is looked at, the number of a cycle where it begins, and guidance on the first page", () => {
    const [first] = SERIES.candles as [SeriesCandle];
    const lines = pictured(sheet);
    const boxes = "blank | blank | blank | blank | blank | blank | blank | blank";
    expect(lines.slice(0, 2)).toEqual([
      "title > 10: Burn test =S-1",
      `name > 10: Bowl, 72.5 mm wide inside, wick ${first.wick}; Soft wax, Rain 6 % of wax, cured 7 days`,
    ]);
    expect(lines.slice(2, 7).map((line) => line.split(":")[0])).toEqual([
      ...["label > 10", "caution > 10", "caution > 10", "caution > 10", "note > 10"],
    ]);
    expect(lines[6]).toMatch(
      /weigh, light\. Each hour: .* After 240 minutes put it out, let it cool for \d+ minutes or more/,
    );
    expect(lines.slice(7, 14)).toEqual([
      `heading: ${["Cycle", "Minutes", "Weight (g)", "Flame (mm)", "Pool (mm)", "Pool depth (mm)", "Wax left (mm)", "Soot", "Glass temperature (C)", "Remarks"].join(" | heading: ")}`,
      `blank center: 1 | blank center: 0 | ${boxes}`,
      ...[60, 120, 180, 240].map((minutes) => `blank | blank center: ${minutes} | ${boxes}`),
      `blank center: 2 | blank center: 0 | ${boxes}`,
    ]);
    expect([sheet.name, sheet.print?.paper]).toEqual(["Cards =S", "a4"]);
    expect(new Set(Object.values(sheet.heights ?? {}))).toHaveLength(1);
    expect(Object.keys(sheet.heights ?? {})).toHaveLength(SERIES.looks.length);
  });

  it("go on behind where a page is full, and part no cycle", () => {
    const long = planSeries({
      ...{ code: "S", vessel: "Bowl", wicks: ["Size 4"], candles: 1, cycles: 14, atOnce: 1 },
      ...{ pouredOn: 46352, cureDays: 1 },
    });
    const { cells, print } = cardSheet(
      long,
      { ...CANDLES, width: undefined, load: undefined, scent: "", cureDays: 1, wax: "" },
      { code: "S", paper: "letter", unit: "g" },
    );
    const titles = cells.filter(({ look }) => look === "title");
    // Six cycles below the guidance, seven on a page behind, and the last one.
    expect(titles.map(({ content }) => content)).toEqual(
      [1, 2, 3].map((page) => ({ text: `Burn test S-1, page ${page} of 3` })),
    );
    expect(print?.newPages).toEqual(titles.slice(1).map(({ row }) => row));
    const [, second = 0, third = 0] = titles.map(({ row }) => row);
    const cycles = (from: number, to: number) =>
      cells.flatMap(({ row, column, content }) =>
        column === 0 && row >= from && row < to && content && "number" in content ? [content.number] : [],
      );
    expect([cycles(0, second), cycles(second, third), cycles(third, Infinity)]).toEqual([
      [1, 2, 3, 4, 5, 6],
      [7, 8, 9, 10, 11, 12, 13],
      [14],
    ]);
    expect(cells.filter(({ look }) => look === "note")).toHaveLength(1);
    expect(cells[1]?.content).toEqual({ text: "Bowl, wick Size 4; the usual wax, no scent, cured 1 day" });
  });

  it("say what is in the candle, what ends the test at once, and who has the last word", () => {
    const { wick } = SERIES.candles[0] as { wick: string };
    expect(texts).toContain(`Bowl, 72.5 mm wide inside, wick ${wick}; Soft wax, Rain 6 % of wax, cured 7 days`);
    expect(texts).toContain("Burn on 2026-12-03 or later. By: ____________________");
    for (const word of ["over 75 mm", "second flame", "too hot to hold", "smoke", "anything but the wick"]) {
      expect(texts.some((text) => text.includes(word))).toBe(true);
    }
    const { wicks, ...always } = BURN_CAUTIONS;
    for (const caution of Object.values(always)) expect(texts.join("\n")).toContain(caution);
    // Only candles with several wicks are told of them.
    expect(texts).not.toContain(wicks);
    const [candle] = SERIES.candles;
    const several = { ...SERIES, candles: [{ ...candle, wick: "2 x Size 6" } as SeriesCandle] };
    const sheet = cardSheet(several, CANDLES, { code: "S", paper: "a4", unit: "g" });
    expect(JSON.stringify(sheet.cells)).toContain(wicks);
    const teaLights = cardSheet(SERIES, { ...CANDLES, product: "tea light" }, { code: "S", paper: "a4", unit: "oz" });
    expect(JSON.stringify(teaLights.cells)).toContain("over 30 mm");
    expect(JSON.stringify(teaLights.cells)).toContain("Glass temperature (F)");
  });
});
