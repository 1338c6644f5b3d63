import { describe, expect, it } from "vitest";
import { waxFactorSpread } from "../../../src/core/fill/waxFactorSpread";

const pours = (...all: [water: number, poured: number][]) => all.map(([water, poured]) => ({ water, poured }));

describe("how sure a wax factor is", () => {
  it("follows from the pours alone where the scale is not known", () => {
    // NIST StRD NoInt2: standard error 0.0420827318078432; t of 2 degrees 4.302653 (Student's t, 95 %).
    expect(waxFactorSpread(pours([4, 3], [5, 4], [6, 4]))).toBeCloseTo(4.302653 * 0.0420827318078432, 6);
    expect(waxFactorSpread(pours([125, 109], [125, 109]))).toBe(0);
  });

  it("is at least what the scale rounds, however many pours weigh the same", () => {
    // GUM F.2.2.1: a step of 1 g has the standard uncertainty 1 g / sqrt(12), of the wax and of the water through the
    // factor 0.872: sqrt(1 + 0.872 ^ 2) / 125 of it; times 1.9623, Student's t of 1000 degrees.
    const least = ((1.9623 / Math.sqrt(12)) * Math.sqrt(1 + 0.872 ** 2)) / 125;
    const alike = (count: number) => pours(...Array.from({ length: count }, (): [number, number] => [125, 109]));
    for (const count of [2, 9]) expect(waxFactorSpread(alike(count), 1)).toBeCloseTo(least, 6);
    expect(waxFactorSpread(alike(2), 0.1)).toBeCloseTo(least / 10, 7);
  });

  it("takes both together, with the degrees of freedom that are left, rounded down", () => {
    // By hand: 83 and 85 for 100 of water have the standard error 0.01. A step of 1 adds 0.0037701: 0.0106871 together,
    // with 1 x 1.06871 ^ 4 = 1.3 degrees of freedom, 1; t of 1 is 12.7062 (GUM, table G.2: 12.71).
    expect(waxFactorSpread(pours([100, 83], [100, 85]), 1)).toBeCloseTo(12.7062 * 0.0106871, 5);
    // 84 and 84.4: 0.002 and 0.0037735, together 0.0042708, with 2.1354 ^ 4 = 20.8 degrees: t of 20 is 2.086.
    expect(waxFactorSpread(pours([100, 84], [100, 84.4]), 1)).toBeCloseTo(2.086 * 0.0042708, 5);
  });
});
