import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { planAtOnePrice } from "../../../src/core/buying/planAtOnePrice";
import { planByGrid } from "../../../src/core/buying/planByGrid";
import { cases } from "../../cases";

const whole = (min: number, max: number) => fc.integer({ min, max });
const taskOf = (need: number, sizes: readonly number[], priceOf = (size: number): number => size) => ({
  need: BigInt(need),
  packs: sizes.map((size) => ({ size: BigInt(size), price: BigInt(priceOf(size)) })),
});
const total = (counts: readonly number[], of: readonly number[]): number =>
  counts.reduce((sum, count, i) => sum + count * (of[i] as number), 0);

describe("planAtOnePrice", () => {
  it("finds what the grid finds, or else nothing is covered at that price", () => {
    // Sizes that differ by less than a word of 32 bits, and by many; some packs dearer than the others.
    const sizes = fc.oneof(whole(1, 70), whole(1, 900));
    const packs = fc.array(fc.record({ size: sizes, dearer: fc.constantFrom(0, 0, 0, 1) }), {
      minLength: 1,
      maxLength: 6,
    });
    let found = 0;
    fc.assert(
      fc.property(whole(1, 20_000), packs, (need, list) => {
        const sizes = list.map(({ size }) => size);
        const prices = list.map(({ size, dearer }) => 3 * size + dearer);
        const task = {
          need: BigInt(need),
          packs: list.map((_, i) => ({ size: BigInt(sizes[i] as number), price: BigInt(prices[i] as number) })),
        };
        const grid = planByGrid(task, 1e9) as number[];
        const plan = planAtOnePrice(task, 1e6);
        const isCovered = !list.every(({ dearer }) => dearer === 1) && total(grid, prices) === 3 * need;
        if (plan) {
          found++;
          const measures = (counts: number[]) => [prices, sizes, sizes.map(() => 1)].map((of) => total(counts, of));
          expect(measures(plan)).toEqual(measures(grid));
          // So much has room for every sum of packs that is needed.
        } else if (need >= Math.max(...sizes) ** 2) expect(isCovered).toBe(false);
      }),
      { numRuns: cases(500, 5000), seed: 1 },
    );
    expect(found).toBeGreaterThan(cases(150, 1500));
  });

  it("covers a million grams to the hundredth and to the thousandth", () => {
    const hundredths = [200_111, 228_777, 259_999, 280_011, 300_111, 333_311, 360_077, 390_199, 419_999, 450_077];
    const plan = planAtOnePrice(taskOf(100_000_000, hundredths), 1e7) ?? [];
    expect(total(plan, hundredths)).toBe(100_000_000);
    const thousandths = hundredths.map((size, i) => 10 * size + i);
    expect(total(planAtOnePrice(taskOf(1_000_000_000, thousandths), 1e7) as number[], thousandths)).toBe(1_000_000_000);
  });

  it("takes the larger packs, and of packs all alike any", () => {
    // 60 is 12 of 5, and 4 of 15; 10 and 20 would be more packs than 20 alone.
    expect(planAtOnePrice(taskOf(60, [5, 15]), 1e6)).toEqual([0, 4]);
    expect(total(planAtOnePrice(taskOf(60, [20, 20]), 1e6) as number[], [1, 1])).toBe(3);
  });

  it("leaves to others what such packs cannot cover to the step, and what is too much work", () => {
    expect(planAtOnePrice(taskOf(7, [4, 6]), 1e6)).toBeUndefined();
    // 4 and 6 cover 2 only by a pack less than none.
    expect(planAtOnePrice(taskOf(2, [4, 6]), 1e6)).toBeUndefined();
    expect(
      planAtOnePrice(
        taskOf(60, [7, 20], (size) => (size === 20 ? 41 : 14)),
        1e6,
      ),
    ).toBeUndefined();
    expect(planAtOnePrice(taskOf(100_000_000, [200_111, 450_077]), 10)).toBeUndefined();
  });
});
