import { describe, expect, it } from "vitest";
import { studentT } from "../../src/core/statistics/studentT";
import { sum } from "../../src/core/statistics/sum";
import { throughOrigin } from "../../src/core/statistics/throughOrigin";

describe("studentT", () => {
  // t(0.975), the published table, to six decimals.
  it.each([
    [1, 12.706205],
    [2, 4.302653],
    [3, 3.182446],
    [4, 2.776445],
    [5, 2.570582],
    [9, 2.262157],
    [10, 2.228139],
    [11, 2.200985],
    [29, 2.04523],
  ])("with %d degrees is %d", (degrees, value) => {
    expect(Math.abs(studentT(degrees) - value)).toBeLessThan(1e-6);
  });

  it("comes to the normal distribution's 1.959964 with many degrees", () => {
    expect(studentT(1_000_000)).toBeCloseTo(1.959966, 5); // 1.959964 is the table's last row
  });
});

describe("throughOrigin", () => {
  // x 60 to 70, y 130 to 140.
  it("gives NIST's certified slope and standard error of NoInt1 to 12 digits, whatever the scale", () => {
    for (const by of [1, 1e9, 1e-9]) {
      const points = Array.from({ length: 11 }, (_, i) => ({ x: (60 + i) * by, y: (130 + i) * by }));
      const { slope, error } = throughOrigin(points);
      expect(slope).toBeCloseTo(2.07438016528926, 12); // NIST StRD, certified
      expect(error).toBeCloseTo(0.0165289256198347, 12); // NIST StRD, certified
    }
  });
});

describe("sum", () => {
  it("keeps what plain adding loses", () => {
    expect(sum([1e16, 1, -1e16])).toBe(1);
    expect(sum(Array(10).fill(0.1))).toBe(1);
  });
});
