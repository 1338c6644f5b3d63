import { describe, expect, it } from "vitest";
import { throwCompare } from "../../../src/core/burn/throwCompare";
import { engineSum } from "./engineSum";

const panel = (forFirst: number, forSecond: number, alike = 0) => [
  ...Array.from({ length: forFirst }, () => ({ first: 4, second: 3 })),
  ...Array.from({ length: forSecond }, () => ({ first: 2, second: 4 })),
  ...Array.from({ length: alike }, () => ({ first: 3, second: 3 })),
];

describe("throwCompare", () => {
  it("has the p of a spreadsheet engine's binomial distribution, who scored alike left out", () => {
    for (const [a, b] of [
      [6, 0],
      [9, 1],
      [7, 3],
      [2, 11],
      [30, 14],
    ] as const) {
      const p = 2 * engineSum(`=BINOM.DIST(${Math.min(a, b)}, ${a + b}, 0.5, TRUE())`);
      // The engine gives ten digits of it.
      expect(throwCompare(panel(a, b, 4)).p).toBeCloseTo(p, 9);
    }
    expect(throwCompare(panel(3, 3)).p).toBe(1);
    expect(throwCompare(panel(0, 0, 5)).p).toBe(1);
  });

  it("counts and takes the middle difference of all", () => {
    expect(throwCompare(panel(3, 1, 1))).toMatchObject({ medianDifference: 1, forFirst: 3, forSecond: 1 });
    expect(throwCompare(panel(1, 1))).toMatchObject({ medianDifference: -0.5 });
  });

  it("says in words whether that says anything", () => {
    // By hand: 2 x 0.5^6 = 0.03125 is the first at most 5 %.
    expect(throwCompare(panel(6, 0)).words).toBe("the first is scored higher, at 95 % confidence");
    expect(throwCompare(panel(0, 6)).words).toBe("the second is scored higher, at 95 % confidence");
    expect(throwCompare(panel(5, 0)).words).toBe(
      "too few to say: at 95 % confidence 6 or more must score them differently",
    );
    expect(throwCompare(panel(5, 0), 0.9).words).toBe("the first is scored higher, at 90 % confidence");
    expect(throwCompare(panel(5, 3)).words).toBe("no difference shown at 95 % confidence");
    expect(() => throwCompare([])).toThrow("first: nobody has scored both");
  });
});
