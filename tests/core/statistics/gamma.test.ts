import { describe, expect, it } from "vitest";
import { incompleteBeta } from "../../../src/core/statistics/incompleteBeta";
import { logGamma } from "../../../src/core/statistics/logGamma";

describe("logGamma", () => {
  it("is the logarithm of factorials and of the half whole numbers", () => {
    // By hand: gamma(n) = (n - 1)!, gamma(1/2) is the root of pi, and gamma(x + 1) = x gamma(x).
    let [whole, half] = [0, Math.log(Math.PI) / 2];
    for (let n = 1; n <= 60; n++) {
      expect(logGamma(n)).toBeCloseTo(whole, 11);
      expect(logGamma(n - 0.5)).toBeCloseTo(half, 11);
      whole += Math.log(n);
      half += Math.log(n - 0.5);
    }
  });
});

describe("incompleteBeta", () => {
  it("is a power where one side is 1, and adds up to 1 from both sides", () => {
    // By hand: with b = 1 it is x^a, with a = 1 it is 1 - (1 - x)^b.
    for (const x of [0, 1e-9, 0.01, 0.3, 0.5, 0.77, 0.999, 1]) {
      for (const a of [0.5, 1, 3.7, 40, 2000]) {
        expect(incompleteBeta(x, a, 1)).toBeCloseTo(x ** a, 11);
        expect(incompleteBeta(x, 1, a)).toBeCloseTo(1 - (1 - x) ** a, 11);
        expect(incompleteBeta(x, a, 2.5) + incompleteBeta(1 - x, 2.5, a)).toBeCloseTo(1, 11);
      }
    }
  });
});
