import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { packPots } from "../../../src/core/batch/packPots";
import { searchPots } from "../../../src/core/batch/searchPots";
import { sizeKinds } from "../../../src/core/batch/sizeKinds";
import { Steps } from "../../../src/core/batch/steps";
import { cases, slowIt } from "../../cases";
import { randomFrom } from "./inputs";
import { fewestByTrying } from "./simplePackers";

const whole = (min: number, max: number) => fc.integer({ min, max });

describe("searchPots", () => {
  it("finds a way where there is one, and proves that there is none where there is none", () => {
    const items = fc.record({
      items: fc.array(whole(5, 60), { minLength: 2, maxLength: 10 }),
      capacity: whole(60, 130),
    });
    fc.assert(
      fc.property(items, ({ items, capacity }) => {
        const ones = items.map(() => 1);
        const kinds = sizeKinds(items, ones, capacity);
        const sizes = kinds.map(({ size }) => size);
        const counts = kinds.map(({ count }) => count);
        const fewest = fewestByTrying(items, capacity);
        const search = (pots: number) => searchPots(sizes, counts, pots, sizes, new Steps(1e7));
        const { fillings = [] } = search(fewest);
        expect(fillings.length).toBeLessThanOrEqual(fewest);
        expect(counts.map((_, i) => fillings.reduce((total, filling) => total + (filling[i] as number), 0))).toEqual(
          counts,
        );
        expect(search(fewest - 1)).toEqual({ impossible: true });
      }),
      { numRuns: cases(300, 3000) },
    );
  });

  it("proves nothing when the steps are gone", () => {
    const sizes = [0.5, 0.4, 0.3, 0.2];
    expect(searchPots(sizes, [5, 5, 5, 5], 7, sizes, new Steps(1e6)).fillings?.length).toBe(7);
    expect(searchPots(sizes, [5, 5, 5, 5], 7, sizes, new Steps(10))).toEqual({ impossible: false });
  });

  slowIt("raises the bound where fractional pots leave one pot open", () => {
    // A problem of the class of binpack1: 49.85 pots by sum, 49.997 fractional ones, and no way to pour 50.
    const random = randomFrom(28);
    const weights = Array.from({ length: 120 }, () => 20 + Math.floor(81 * random()));
    const { pots, bound } = packPots(weights, Array(120).fill(1), 150);
    expect(weights.reduce((total, weight) => total + weight) / 150).toBeCloseTo(49.847, 3);
    expect([pots.length, bound]).toEqual([51, 51]);
  });
});
