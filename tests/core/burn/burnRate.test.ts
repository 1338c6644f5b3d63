import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { burnRate } from "../../../src/core/burn/burnRate";
import { straightLine } from "../../../src/core/statistics/straightLine";
import type { Point } from "../../../src/core/statistics/throughOrigin";

// NIST StRD Norris, y and x. The readings are from memory; that they are right is shown below, where exact
// arithmetic on them gives the certified values to the last of their 15 digits.
const NORRIS = [
  [0.1, 0.2],
  [338.8, 337.4],
  [118.1, 118.2],
  [888, 884.6],
  [9.2, 10.1],
  [228.1, 226.5],
  [668.5, 666.3],
  [998.5, 996.3],
  [449.1, 448.6],
  [778.9, 777],
  [559.2, 558.2],
  [0.3, 0.4],
  [0.1, 0.6],
  [778.1, 775.5],
  [668.8, 666.9],
  [339.3, 338],
  [448.9, 447.5],
  [10.8, 11.6],
  [557.7, 556],
  [228.3, 228.1],
  [998, 995.8],
  [888.8, 887.6],
  [119.6, 120.2],
  [0.3, 0.3],
  [0.6, 0.3],
  [557.6, 556.8],
  [339.3, 339.1],
  [888, 887.2],
  [998.5, 999],
  [778.9, 779],
  [10.2, 11.1],
  [117.6, 118.3],
  [228.9, 229.2],
  [668.4, 669.1],
  [449.2, 448.9],
  [0.2, 0.5],
].map(([y, x]) => ({ x, y }) as Point);

/** Slope and intercept in whole numbers; `unit` makes every coordinate whole. */
function exactLine(points: readonly Point[], unit: number): { slope: number; intercept: number } {
  const n = BigInt(points.length);
  const total = (of: (x: bigint, y: bigint) => bigint) =>
    points.reduce((sum, { x, y }) => sum + of(BigInt(Math.round(x * unit)), BigInt(Math.round(y * unit))), 0n);
  const [sx, sy] = [total((x) => x), total((_, y) => y)];
  const [sxx, sxy] = [total((x) => x * x), total((x, y) => x * y)];
  const [top, bottom] = [n * sxy - sx * sy, n * sxx - sx * sx];
  const divided = (a: bigint, b: bigint) => Number((a * 10n ** 30n) / b) / 1e30;
  return { slope: divided(top, bottom), intercept: divided(sy * bottom - top * sx, n * bottom) / unit };
}

describe("straightLine", () => {
  it("has the exact Norris readings to check against", () => {
    expect(exactLine(NORRIS, 10).slope).toBeCloseTo(1.00211681802045, 14); // NIST StRD, certified
    expect(exactLine(NORRIS, 10).intercept).toBeCloseTo(-0.262323073774029, 15); // NIST StRD, certified
  });

  it("gives NIST's certified slope and intercept of Norris to 12 digits", () => {
    const { slope, intercept } = straightLine(NORRIS);
    expect(Math.abs(slope / 1.00211681802045 - 1)).toBeLessThan(1e-12);
    expect(Math.abs(intercept / -0.262323073774029 - 1)).toBeLessThan(1e-12);
  });

  it("keeps 12 digits where small changes stand on large numbers", () => {
    // Whole 2^-30ths near 46,000: what a date-time is. The exact line is worked out in whole numbers.
    const unit = 2 ** 30;
    const reading = fc.record({
      minute: fc.integer({ min: 0, max: 2_000 }),
      noise: fc.integer({ min: -1_000_000, max: 1_000_000 }),
    });
    fc.assert(
      fc.property(fc.array(reading, { minLength: 2, maxLength: 40 }), (readings) => {
        fc.pre(new Set(readings.map(({ minute }) => minute)).size > 1);
        const points = readings.map(({ minute, noise }) => ({
          x: Math.round((46_000 + minute / 1440) * unit) / unit,
          y: Math.round((250 - 0.1 * minute) * unit + noise) / unit,
        }));
        const exact = exactLine(points, unit).slope;
        expect(Math.abs(straightLine(points).slope / exact - 1)).toBeLessThan(1e-12);
      }),
      { numRuns: 1000 },
    );
  });
});

describe("burnRate", () => {
  it("is the slope of Norris turned round, and positive when weight is lost", () => {
    const falling = NORRIS.map(({ x, y }) => ({ hours: x, weight: 1000 - y }));
    expect(Math.abs(burnRate(falling) / 1.00211681802045 - 1)).toBeLessThan(1e-12); // NIST StRD, certified
  });

  it("finds a steady loss again, from any hour on", () => {
    const whole = fc.integer({ min: 0, max: 1_000 });
    fc.assert(
      fc.property(
        whole,
        fc.uniqueArray(whole, { minLength: 2, maxLength: 9 }),
        fc.integer({ min: 0, max: 20 }),
        (start, hours, rate) => {
          const readings = hours.map((hour) => ({ hours: start + hour, weight: 30_000 - rate * hour }));
          expect(burnRate(readings)).toBeCloseTo(rate, 9);
        },
      ),
    );
  });

  it("refuses dates in the place of hours", () => {
    // 26 November 2026 is serial 46352; in hours it is 1112448.
    const at = (...hours: number[]) => hours.map((hour, i) => ({ hours: hour, weight: 250 - i }));
    expect(() => burnRate(at(46_352, 46_352.25))).toThrow(
      "hours: 46352 is above 10000; of clock times and date-times take off the start and multiply by 24",
    );
    expect(() => burnRate(at(46_352 * 24, 46_352.25 * 24))).toThrow("hours: 1112448 is above 10000");
    expect(burnRate(at(9999, 10_000))).toBeCloseTo(1, 9);
  });

  it("refuses clock times in the place of hours", () => {
    const at = (...hours: number[]) => hours.map((hour, i) => ({ hours: hour, weight: 250 - 7 * i }));
    // 9:00, 10:00 and 13:00 of a day, as parts of it.
    expect(() => burnRate(at(9 / 24, 10 / 24, 13 / 24))).toThrow(
      "hours: all lie within half an hour; of clock times and date-times take off the start and multiply by 24",
    );
    expect(() => burnRate(at(0.5, 1))).toThrow("within half an hour");
    expect(burnRate(at(0.5, 1.01))).toBeCloseTo(7 / 0.51, 9);
  });

  it("needs two readings at two times", () => {
    expect(() => burnRate([{ hours: 1, weight: 2 }])).toThrow(
      "hours: 1 readings with hours and weight; weigh at least twice",
    );
    expect(() =>
      burnRate([
        { hours: 3, weight: 2 },
        { hours: 3, weight: 1 },
      ]),
    ).toThrow("hours: all readings are of one time");
    expect(() =>
      burnRate([
        { hours: 3, weight: 2 },
        { hours: -3, weight: 1 },
      ]),
    ).toThrow("hours: -3 is below 0");
    expect(
      Object.is(
        burnRate([
          { hours: 3, weight: 2 },
          { hours: 4, weight: 2 },
        ]),
        0,
      ),
    ).toBe(true);
  });
});
