import { describe, expect, it } from "vitest";
import { readSeries } from "../../../src/runsheet/series/readSeries";
import { readTable } from "../../../src/runsheet/tables/readTables";
import { matchColumns, type TableTypeId } from "../../../src/runsheet/tables/registry";
import type { TableRows } from "../../../src/runsheet/tables/tableRows";
import type { CellValue } from "../../../src/sheet/sheet";
import { engineSum } from "../../core/burn/engineSum";

const TESTS = ["Test", "Vessel", "Inside width (cm)", "Wick"];
const LOOKS = ["Test", "Cycle", "Minutes", "Weight (g)", "Flame (mm)", "Pool (cm)", "Wax left (cm)", "Soot", "Throw"];

const tableOf = <K extends TableTypeId>(type: K, headings: string[], rows: CellValue[][]) =>
  ({ type, headings, rows, columns: matchColumns(type, headings) }) as TableRows<K>;

/** All invented. */
function seen(tests: CellValue[][], looks: CellValue[][], fill?: number) {
  const read = readTable(tableOf("burnTests", TESTS, tests), "g") ?? new Map();
  return readSeries([...read.values()], readTable(tableOf("readings", LOOKS, looks), "g") ?? new Map(), fill);
}
const TWO = [
  ["A", "Bowl", 8, "Size 6"],
  ["B", "Bowl", 8, "Size 6"],
];
/** A candle weighed at the start and the end of a cycle of four hours. */
const burnt = (test: string, rate: number): CellValue[][] => [
  [test, 1, 0, 300, null, null, null, null, null],
  [test, 1, 240, 300 - 4 * rate, 20, 8, null, null, null],
];

describe("the figures of a wick", () => {
  it("gives the pools of all its candles hour by hour, each look to the full hour that is nearest", () => {
    const [wick] = seen(TWO, [
      ["A", 1, 25, null, null, 1, null, null, null],
      ["A", 1, 55, null, null, 3, null, null, null],
      ["A", 2, 65, null, null, 3.6, null, null, null],
      ["B", 1, 60, null, null, 2.4, null, null, null],
      ["B", 1, 120, null, null, 8, null, null, null],
    ]);
    // By hand: 2.4 / 8 = 0.3, 3.6 / 8 = 0.45; 25 minutes belong to no full hour.
    expect(wick?.pools.map(({ hour, least, most }) => [hour, ...[least, most].map((one) => one.toFixed(6))])).toEqual([
      [1, "0.300000", "0.450000"],
      [2, "1.000000", "1.000000"],
    ]);
  });

  it("gives what was read of soot, each once, and the mean score of the throw", () => {
    const [wick] = seen(TWO, [
      ["A", 1, 240, null, 20, 8, null, "none", 3],
      ["B", 1, 240, null, 20, 8, null, "None ", 4],
      ["B", 2, 240, null, 20, 8, null, 0.4, 4],
    ]);
    expect(wick?.soot).toEqual(["none", "0.4"]);
    expect(wick?.throw).toEqual({ mean: expect.closeTo(11 / 3, 12), scores: 3 });
    const [unread] = seen(TWO, burnt("A", 5));
    expect([unread?.soot, unread?.throw, unread?.bound]).toEqual([[], undefined, undefined]);
  });

  it("takes the hours to burn down from candles that were burnt to 10 mm, as a spreadsheet engine works them out", () => {
    const to = (test: string, last: number): CellValue[][] => [
      [test, 1, 240, null, 20, 8, 2, "none", null],
      [test, 2, 240, null, 20, 8, 1.5, "none", null],
      [test, 3, last, null, 20, 8, 1, "none", null],
    ];
    const [wick] = seen(TWO, [...to("A", 180), ...to("B", 240), ["B", 4, 60, null, 20, 8, 0.9, "none", null]], 200);
    // 4 + 4 + 3 = 11 h and 4 + 4 + 4 = 12 h: 10 mm were reached in the third cycle, and what came after counts no more.
    const half = engineSum("=CONFIDENCE.T(0.05,STDEV.S({11;12}),2)");
    expect(wick?.life).toEqual({
      ...{ by: "burnt", candles: 2, mean: 11.5 },
      interval: [expect.closeTo(11.5 - half, 8), expect.closeTo(11.5 + half, 8)],
    });
  });

  it("else works them out from the fill and the rate, and from the ends of its interval", () => {
    const [wick] = seen(TWO, [...burnt("A", 5), ...burnt("B", 5.2)], 204);
    const half = engineSum("=CONFIDENCE.T(0.05,STDEV.S({5;5.2}),2)");
    expect(wick?.life).toEqual({
      ...{ by: "rate", candles: 2, mean: expect.closeTo(204 / 5.1, 10) },
      interval: [expect.closeTo(204 / (5.1 + half), 8), expect.closeTo(204 / (5.1 - half), 8)],
    });
    // One candle has no interval, and one whose rate may be none no end.
    expect(seen(TWO, burnt("A", 5), 204)[0]?.life).toEqual({
      ...{ by: "rate", candles: 1, mean: expect.closeTo(40.8, 10), interval: undefined },
    });
    expect(seen(TWO, [...burnt("A", 2), ...burnt("B", 8)], 204)[0]?.life).toMatchObject({ interval: undefined });
    expect(seen(TWO, burnt("A", 5))[0]?.life).toBeUndefined();
  });

  it("gives no lowest pass rate where none passed", () => {
    const high = TWO.map(([test]): CellValue[] => [test as string, 1, 60, null, 80, 3, null, null, null]);
    // None of two passed: the bound is 0, which says nothing.
    expect(seen(TWO, high)[0]).toMatchObject({ judged: 2, passed: 0, bound: undefined });
  });
});
