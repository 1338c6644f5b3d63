import { describe, expect, it } from "vitest";
import { wickAt } from "../../../src/core/burn/wickAt";
import { engineSum, inFormula } from "./engineSum";

/** Invented candles: size of wick, and weight lost an hour in grams. */
const CANDLES = [
  [4, 4.1],
  [4, 4.4],
  [6, 5.0],
  [6, 5.3],
  [8, 6.4],
  [8, 6.0],
  [10, 7.1],
  [10, 6.8],
].map(([x, y]) => ({ x: x as number, y: y as number }));

describe("wickAt", () => {
  it("is where the line of a spreadsheet engine gives the value", () => {
    const [xs, ys] = [inFormula(CANDLES.map(({ x }) => x)), inFormula(CANDLES.map(({ y }) => y))];
    const size = engineSum(`=AVERAGE(${xs})+(5.5-AVERAGE(${ys}))/SLOPE(${ys},${xs})`);
    expect(wickAt(CANDLES, 5.5).size).toBeCloseTo(size, 10);
  });

  it("ends where the line's own 95 % band ends, found by halving", () => {
    const [xs, ys] = [inFormula(CANDLES.map(({ x }) => x)), inFormula(CANDLES.map(({ y }) => y))];
    const of = (formula: string) => engineSum(`=${formula}`);
    const [slope, intercept, steyx, mean, t] = [
      of(`SLOPE(${ys},${xs})`),
      of(`AVERAGE(${ys})-SLOPE(${ys},${xs})*AVERAGE(${xs})`),
      of(`STEYX(${ys},${xs})`),
      of(`AVERAGE(${xs})`),
      of("T.INV.2T(0.05,6)"),
    ];
    const squares = of(`DEVSQ(${xs})`);
    /** The band about the line: the second way to the same ends. */
    const edge = (x: number, side: number) =>
      intercept + slope * x + side * t * steyx * Math.sqrt(1 / 8 + (x - mean) ** 2 / squares);
    const where = (side: number): number => {
      let [low, high] = [-100, 100];
      for (let i = 0; i < 100; i++) {
        const middle = (low + high) / 2;
        if (edge(middle, side) < 5.5) low = middle;
        else high = middle;
      }
      return low;
    };
    const { lower, upper } = wickAt(CANDLES, 5.5);
    expect(lower).toBeCloseTo(where(1), 7);
    expect(upper).toBeCloseTo(where(-1), 7);
  });

  it("gives a falling line its size too, lower before upper", () => {
    const falling = CANDLES.map(({ x, y }) => ({ x, y: -y }));
    const { size, lower, upper } = wickAt(falling, -5.5);
    expect(wickAt(CANDLES, 5.5)).toEqual({ size, lower: expect.closeTo(lower, 9), upper: expect.closeTo(upper, 9) });
  });

  it("gives the smallest and the largest size that were tried, whatever binary fractions make of them", () => {
    const tenths = [
      { x: 0.1, y: 0.4 },
      { x: 0.3, y: 0.7 },
      { x: 0.5, y: 1 },
    ];
    expect(wickAt(tenths, 0.4).size).toBeCloseTo(0.1, 12);
    expect(wickAt(tenths, 1).size).toBeCloseTo(0.5, 12);
  });

  it("says that a line is too flat, and that a size was not tried", () => {
    const flat = [4, 4, 8, 8].map((x, i) => ({ x, y: 5 + (i % 2) }));
    expect(() => wickAt(flat, 5.5)).toThrow("values: the line is too flat to say");
    // No wrong input, but no answer: #N/A in a cell.
    expect(() => wickAt(flat, 5.5)).toThrow(expect.objectContaining({ kind: "none" }));
    expect(() => wickAt(CANDLES, 9)).toThrow(
      "wanted: the line gives 9 at a size beyond those tried, 4 to 10; test there",
    );
    expect(() => wickAt(CANDLES, 1)).toThrow("beyond those tried");
    expect(() => wickAt(CANDLES.slice(0, 2), 4)).toThrow("values: 2 candles with size and value; burn 3 or more");
    expect(() =>
      wickAt(
        CANDLES.map(({ y }) => ({ x: 4, y })),
        4,
      ),
    ).toThrow("sizes: all candles have one size of wick");
  });
});
