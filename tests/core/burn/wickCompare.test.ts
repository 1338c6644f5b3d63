import { describe, expect, it } from "vitest";
import { wickCompare } from "../../../src/core/burn/wickCompare";
import { Fault } from "../../../src/core/fault";
import { holm } from "../../../src/core/statistics/holm";
import { welch } from "../../../src/core/statistics/welch";
import { engineSum, inFormula } from "./engineSum";

/** Invented candles: weight lost an hour, in grams. */
const SERIES = {
  thin: [4.1, 4.3, 4.0],
  middle: [5.2, 5.6, 5.1, 5.4],
  thick: [5.6, 6.1, 5.7],
  single: [7.2],
};
const tried = Object.entries(SERIES).flatMap(([wick, values]) => values.map((value) => ({ wick, value })));

describe("welch", () => {
  it("is the p that a spreadsheet engine gives for samples of unlike spread", () => {
    for (const [a, b] of [
      [SERIES.thin, SERIES.middle],
      [SERIES.middle, SERIES.thick],
      [
        [1, 2, 3, 4, 100],
        [5, 5.5],
      ],
    ] as const) {
      expect(welch(a, b)).toBeCloseTo(engineSum(`=T.TEST(${inFormula(a)}, ${inFormula(b)}, 2, 3)`), 8);
    }
  });

  it("says 1 or 0 where nothing spreads", () => {
    expect(welch([2, 2], [2, 2, 2])).toBe(1);
    expect(welch([2, 2], [3, 3])).toBe(0);
  });
});

describe("holm", () => {
  it("multiplies by those that are left, never falling and never above 1", () => {
    // By hand: 0.01 x 4; 0.02 x 3; 0.03 x 2, no less than the one before; 0.9 x 1.
    expect(holm([0.03, 0.9, 0.01, 0.02])).toEqual([0.06, 0.9, 0.04, 0.06]);
    expect(holm([0.6, 0.7])).toEqual([1, 1]);
    expect(holm([])).toEqual([]);
  });
});

describe("wickCompare", () => {
  it("gives means and intervals as a spreadsheet engine works them out", () => {
    const found = wickCompare(tried, (wick) => wick);
    expect(found.map(({ wick, count }) => [wick, count])).toEqual([
      ["thin", 3],
      ["middle", 4],
      ["thick", 3],
      ["single", 1],
    ]);
    for (const { wick, mean, interval } of found.slice(0, 3)) {
      const values = SERIES[wick as keyof typeof SERIES];
      const array = inFormula(values);
      const half = engineSum(`=T.INV.2T(0.05, ${values.length - 1})*STDEV.S(${array})/SQRT(${values.length})`);
      expect(mean).toBeCloseTo(engineSum(`=AVERAGE(${array})`), 12);
      expect(interval).toEqual([expect.closeTo(mean - half, 7), expect.closeTo(mean + half, 7)]);
    }
  });

  it("tells apart by Welch and Holm, and nothing of a single candle", () => {
    const found = wickCompare(tried, (wick) => wick);
    const p = (a: readonly number[], b: readonly number[]) =>
      engineSum(`=T.TEST(${inFormula(a)}, ${inFormula(b)}, 2, 3)`);
    // By Holm the smallest of three counts threefold, and so on; only middle and thick stay within 5 %.
    expect(3 * p(SERIES.thin, SERIES.middle)).toBeLessThan(0.05);
    expect(2 * p(SERIES.thin, SERIES.thick)).toBeLessThan(0.05);
    expect(p(SERIES.middle, SERIES.thick)).toBeGreaterThan(0.05);
    expect(found.map(({ alike }) => alike)).toEqual([[], ["thick"], ["middle"], []]);
    expect(found[3]?.interval).toBeInstanceOf(Fault);
  });

  it("takes names that are one as one, called as it is first", () => {
    const named = [
      { wick: "Size 4", value: 1 },
      { wick: "size 4 ", value: 2 },
    ];
    expect(wickCompare(named, (wick) => wick.trim().toLowerCase())).toMatchObject([
      { wick: "Size 4", count: 2, mean: 1.5 },
    ]);
  });

  it("refuses nothing at all, and more wicks than a series has", () => {
    expect(() => wickCompare([], (wick) => wick)).toThrow("wicks: no candle has a wick and a value");
    const many = Array.from({ length: 101 }, (_, wick) => ({ wick, value: 1 }));
    expect(() => wickCompare(many, (wick) => wick)).toThrow("wicks: 101 different wicks; compare at most 100 at once");
  });
});
