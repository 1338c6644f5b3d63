import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { passBound } from "../../../src/core/burn/passBound";
import { engineSum } from "./engineSum";

describe("passBound", () => {
  it("is the root of the doubt where all passed", () => {
    // By hand: all of n pass with p^n, which is 5 % at p = 0.05^(1/n).
    for (const n of [1, 3, 10, 59]) expect(passBound(n, n)).toBeCloseTo(0.05 ** (1 / n), 12);
    expect(passBound(3, 3)).toBeCloseTo(0.3684, 4);
  });

  it("is the beta quantile of a spreadsheet engine", () => {
    for (const [passed, tried, sure] of [
      [9, 10, 0.95],
      [1, 3, 0.95],
      [47, 60, 0.9],
      [980, 1000, 0.99],
    ] as const) {
      const other = engineSum(`=BETA.INV(${1 - sure}, ${passed}, ${tried - passed + 1})`);
      expect(passBound(passed, tried, sure)).toBeCloseTo(other, 8);
    }
  });

  it("leaves so many passes with the doubt, counted out by the binomial distribution", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 40 }),
        fc.nat(),
        fc.double({ min: 0.5, max: 0.999, noNaN: true }),
        (n, k, sure) => {
          const passed = 1 + (k % n);
          const bound = passBound(passed, n, sure);
          let atLeast = 0;
          let choose = 1;
          for (let i = 0; i <= n; i++) {
            if (i > 0) choose = (choose * (n - i + 1)) / i;
            if (i >= passed) atLeast += choose * bound ** i * (1 - bound) ** (n - i);
          }
          expect(atLeast).toBeCloseTo(1 - sure, 9);
        },
      ),
    );
  });

  it("leaves nothing where none passed, and answers for very many", () => {
    expect(passBound(0, 12)).toBe(0);
    expect(passBound(1_000_000, 1_000_000)).toBeCloseTo(0.05 ** 1e-6, 10);
    expect(passBound(500_000, 1_000_000)).toBeCloseTo(0.5 - 1.6449 * 0.0005, 5); // the normal curve's 95 %, from memory
  });

  it("refuses what is no count, and the doubt in the place of the confidence", () => {
    expect(() => passBound(4, 3)).toThrow("passed: 4 of 3 tried; write at most as many as were tried");
    expect(() => passBound(0, 0)).toThrow("tried: none were tried; write 1 or more");
    expect(() => passBound(0.9, 1)).toThrow("passed: 0.9 is not a count of candles");
    expect(() => passBound(-1, 3)).toThrow("passed: -1 is not a count of candles");
    expect(() => passBound(3, 3, 0.05)).toThrow("confidence: 5 % is below 50 %; write 95%");
    expect(() => passBound(3, 3, 95)).toThrow("confidence: 95 means 9500 %; write 95% or 0.95");
  });
});
