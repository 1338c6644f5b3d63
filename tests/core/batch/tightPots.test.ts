import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { sizeKinds } from "../../../src/core/batch/sizeKinds";
import { Steps } from "../../../src/core/batch/steps";
import { tightPots } from "../../../src/core/batch/tightPots";
import { cases } from "../../cases";
import { triplets } from "./inputs";
import { fewestByTrying } from "./simplePackers";

/** Looks for so many pots for items, one of each. */
function search(items: readonly number[], capacity: number, pots: number, steps = 1e7) {
  const ones = items.map(() => 1);
  const kinds = sizeKinds(items, ones, capacity);
  const sizes = kinds.map(({ size }) => size);
  const counts = kinds.map(({ count }) => count);
  return { sizes, counts, ...tightPots(sizes, counts, pots, new Steps(steps)) };
}

function expectPoured({ sizes, counts, fillings = [] }: ReturnType<typeof search>): void {
  expect(counts.map((_, i) => fillings.reduce((total, filling) => total + (filling[i] as number), 0))).toEqual(counts);
  for (const filling of fillings) {
    expect(filling.reduce((full, n, i) => full + n * (sizes[i] as number), 0)).toBeLessThanOrEqual(1 + 1e-12);
  }
}

const whole = (min: number, max: number) => fc.integer({ min, max });

describe("tightPots", () => {
  it("finds a way where there is one, and proves that there is none where there is none", () => {
    const items = fc.record({
      items: fc.array(whole(5, 60), { minLength: 2, maxLength: 10 }),
      capacity: whole(60, 90),
    });
    fc.assert(
      fc.property(items, ({ items, capacity }) => {
        const fewest = fewestByTrying(items, capacity);
        const found = search(items, capacity, fewest);
        expect(found.fillings?.length).toBeLessThanOrEqual(fewest);
        expectPoured(found);
        expect(search(items, capacity, fewest - 1)).toEqual({
          sizes: found.sizes,
          counts: found.counts,
          impossible: true,
        });
      }),
      { numRuns: cases(300, 3000) },
    );
  });

  it("fills 83 pots to the brim, the same each time", () => {
    const { weights, capacity } = triplets(1, 83);
    const found = search(weights, capacity, 83);
    expect(found.fillings).toHaveLength(83);
    expectPoured(found);
    expect(search(weights, capacity, 83)).toEqual(found);
  });

  it("proves nothing when the steps are gone, or where there are too many fillings to list", () => {
    const { weights, capacity } = triplets(1, 83);
    expect(search(weights, capacity, 83, 2000)).toMatchObject({ impossible: false });
    // Of 60 candles with a whole pot to spare nearly any may stand together.
    const fills = Array.from({ length: 60 }, (_, i) => 100 + 3 * i);
    const total = fills.reduce((sum, fill) => sum + fill);
    const found = search(fills, 1000, Math.ceil(total / 1000) + 1);
    expect(found).toMatchObject({ impossible: false });
  });
});
