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
    // factor 0.872: sqrt(1 + 0.872 ^ 2) / 125 of it; times 1.96, the normal distribution's.
    const least = ((1.959964 / Math.sqrt(12)) * Math.sqrt(1 + 0.872 ** 2)) / 125;
    const alike = (count: number) => pours(...Array.from({ length: count }, (): [number, number] => [125, 109]));
    for (const count of [2, 9]) expect(waxFactorSpread(alike(count), 1)).toBeCloseTo(least, 6);
    expect(waxFactorSpread(alike(2), 0.1)).toBeCloseTo(least / 10, 7);
  });

  it("takes both together, each with its own factor", () => {
    // By hand: 83 and 85 for 100 of water have the standard error 0.01; t of 1 is 12.7062 (GUM, table G.2: 12.71).
    // A step of 1 adds 1.96 x 0.0037701.
    expect(waxFactorSpread(pours([100, 83], [100, 85]), 1)).toBeCloseTo(Math.hypot(0.127062, 0.0073892), 6);
  });

  it("is never surer on a coarser scale", () => {
    const spreads = [0, 0.1, 1, 2, 4, 5].map((division) => waxFactorSpread(pours([248, 212], [248, 215]), division));
    expect(spreads).toEqual([...spreads].sort((a, b) => a - b));
    expect(new Set(spreads).size).toBe(spreads.length);
  });
});
