import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { limit } from "../../../src/core/check/limit";
import { wholeNumber } from "../../../src/core/check/wholeNumber";

describe("wholeNumber", () => {
  it("takes what is whole but for the noise of binary fractions", () => {
    expect([100 * 1.1, 0.3 / 0.1, 0.1 + 0.2 - 0.3, -1, 0].map(wholeNumber)).toEqual([110, 3, 0, -1, 0]);
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1e9 }), fc.integer({ min: 1, max: 999 }), (whole, by) => {
        expect(wholeNumber((whole / by) * by)).toBe(whole);
        expect(wholeNumber(whole + 1e-3)).toBeNaN();
      }),
    );
  });
  it("takes nothing else", () => {
    expect([0.5, 1.000_001, 109.999, Number.NaN, Number.POSITIVE_INFINITY].map(wholeNumber)).toEqual(
      Array(5).fill(Number.NaN),
    );
  });
});

describe("limit", () => {
  it("is a share from 0 to 1", () => {
    expect([0, 0.05, 1, 0.7 + 0.3 * (1 + 1e-15)].map((value) => limit("limit", value))).toEqual([0, 0.05, 1, 1]);
    expect(() => limit("limit", 5)).toThrow("limit: 5 means 500 %; write 5% or 0.05");
    expect(() => limit("limit", 1.01)).toThrow("limit: 1.01 means 101 %");
    expect(() => limit("limit", -0.1)).toThrow("limit: -0.1 is below 0");
  });
});
