import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { recipeSplit } from "../../../src/core/scent/recipeSplit";
import { scentSplit } from "../../../src/core/scent/scentSplit";
import { divisionsIn } from "../../../src/core/weighing/divisionsIn";
import { inDivisions } from "../../../src/core/weighing/inDivisions";
import { weighOut } from "../../../src/core/weighing/weighOut";

/** Weights as whole numerators of one denominator, so that nothing is rounded. */
interface Exact {
  readonly weights: readonly bigint[];
  readonly one: bigint;
}

const total = (values: readonly bigint[]): bigint => values.reduce((sum, value) => sum + value, 0n);

/** Whole divisions by the largest remainder in whole numbers: half a division up, of equal remainders the earlier. */
function divisionsOf({ weights, one }: Exact, hundredths: number): { counts: bigint[]; isClear: boolean } {
  const division = one * BigInt(hundredths);
  const parts = weights.map((weight) => weight * 100n);
  const counts = parts.map((part) => part / division);
  const lost = parts.map((part) => part % division);
  const missing = Number((2n * total(parts) + division) / (2n * division) - total(counts));
  const order = [...lost.keys()].sort((a, b) => Number((lost[b] as bigint) - (lost[a] as bigint)) || a - b);
  for (const i of order.slice(0, missing)) counts[i] = (counts[i] as bigint) + 1n;
  // Remainders that differ by less than the digits that count are not told apart.
  const sorted = order.map((i) => lost[i] as bigint);
  const isClear = sorted.slice(1).every((value, i) => {
    const gap = (sorted[i] as bigint) - value;
    return gap === 0n || gap * 100_000n > division;
  });
  return { counts, isClear };
}

const whole = (min: number, max: number) => fc.integer({ min, max });
const HUNDREDTHS = fc.constantFrom(1, 10, 50, 100, 200, 500); // of a unit: divisions 0.01, 0.1, 0.5, 1, 2 and 5
const counted = (weights: readonly number[], hundredths: number) =>
  weights.map((weight) => BigInt(Math.round(weight / (hundredths / 100))));

/** A fill in tenths to thousandths, often half-way between two divisions. */
const fills = HUNDREDTHS.chain((hundredths) =>
  fc.tuple(
    fc.constant(hundredths),
    fc.oneof(
      whole(1, 2_000_000),
      whole(0, 2000).map((n) => (2 * n + 1) * hundredths * 5),
    ),
  ),
).map(([hundredths, thousandths]) => ({ hundredths, thousandths, fill: thousandths / 1000 }));

describe("weighOut", () => {
  it("is the largest remainder in whole numbers, for weights in thousandths", () => {
    fc.assert(
      fc.property(
        fc.array(whole(0, 200_000), { minLength: 1, maxLength: 30 }),
        HUNDREDTHS,
        (thousandths, hundredths) => {
          const { counts } = divisionsOf({ weights: thousandths.map(BigInt), one: 1000n }, hundredths);
          const weighed = weighOut(
            thousandths.map((weight) => weight / 1000),
            hundredths / 100,
          );
          expect(counted(weighed, hundredths)).toEqual(counts);
        },
      ),
      { numRuns: 2000 },
    );
  });

  it("is the same for the parts of a recipe, whose total is the fill", () => {
    const recipe = fc.record({
      parts: fc.array(whole(1, 9), { minLength: 1, maxLength: 4 }),
      ofWax: fc.array(whole(0, 12), { maxLength: 3 }),
      ofTotal: fc.array(whole(0, 12), { maxLength: 3 }),
    });
    fc.assert(
      fc.property(fills, recipe, ({ hundredths, thousandths, fill }, { parts, ofWax, ofTotal }) => {
        const percent = (values: number[]) => BigInt(values.reduce((sum, value) => sum + value, 0));
        const [all, wax, of] = [percent(parts), 100n + percent(ofWax), 100n - percent(ofTotal)];
        // The wax base is fill x of / wax; every weight over 1000 x wax x 100 x all.
        const mass = BigInt(thousandths);
        const exact = {
          weights: [
            ...parts.map((part) => mass * of * BigInt(part) * 100n),
            ...ofWax.map((load) => mass * of * BigInt(load) * all),
            ...ofTotal.map((load) => mass * BigInt(load) * wax * all),
          ],
          one: 1000n * wax * 100n * all,
        };
        expect(total(exact.weights) * 1000n).toBe(mass * exact.one);
        const { counts, isClear } = divisionsOf(exact, hundredths);
        fc.pre(isClear);
        const ingredients = [
          ...parts.map((share) => ({ share, basis: "part" })),
          ...ofWax.map((load) => ({ share: load / 100, basis: "of wax" })),
          ...ofTotal.map((load) => ({ share: load / 100, basis: "of total" })),
        ];
        expect(counted(recipeSplit(fill, ingredients, hundredths / 100), hundredths)).toEqual(counts);
      }),
      { numRuns: 5000 },
    );
  });

  it("makes the same total of a fill however it is split", () => {
    const load = whole(0, 30).map((percent) => percent / 100);
    fc.assert(
      fc.property(
        fills,
        load,
        fc.constantFrom("of wax", "of total"),
        ({ hundredths, thousandths, fill }, share, on) => {
          const rounded = BigInt(Math.floor((thousandths + 5 * hundredths) / (10 * hundredths)));
          const { wax, scent } = scentSplit(fill, share, on);
          expect(total(counted(weighOut([wax, scent], hundredths / 100), hundredths))).toBe(rounded);
          expect(total(counted(weighOut([fill], hundredths / 100), hundredths))).toBe(rounded);
        },
      ),
      { numRuns: 5000 },
    );
  });

  it.each([
    // Worked by hand: half a division goes up.
    [998.5, [1, 1, 1], [333, 333, 333]],
    [1000, [1, 1, 1], [334, 333, 333]], // a third lost by each: the earlier one gets it
    [2000, [1, 1, 1], [667, 667, 666]],
  ])("%d g in equal parts", (fill, shares, weights) => {
    const ingredients = shares.map((share) => ({ share, basis: "part" }));
    expect(recipeSplit(fill, ingredients, 1)).toEqual(weights);
  });

  it("rounds half a division of a scented fill up, as the fill alone", () => {
    // By hand: 998.5 / 1.06 = 941.98 and 56.52 make 999; 206.5 / 1.07 = 192.99 and 13.51 make 207.
    const scented = [
      { share: 3, basis: "part" },
      { share: 0.06, basis: "of wax" },
    ];
    expect(recipeSplit(998.5, scented, 1)).toEqual([942, 57]);
    const { wax, scent } = scentSplit(206.5, 0.07);
    expect(weighOut([wax, scent], 1)).toEqual([193, 14]);
  });

  it("gives equal remainders to the earlier one, however large the weights beside them", () => {
    // 3333 1/3, 3 1/3 and 33 1/3 are short by the same third of a division; 3370 is the total.
    expect(weighOut([10_000 / 3, 10 / 3, 100 / 3], 1)).toEqual([3334, 3, 33]);
    expect(weighOut([10 / 3, 10_000 / 3, 100 / 3], 1)).toEqual([4, 3333, 33]);
  });

  it("refuses a division finer than the digits of the weights", () => {
    expect(() => weighOut([1e6], 1e-9)).toThrow("division: 1e-9 is too fine for 1000000; write the scale's step");
    expect(() => weighOut([1], 5e-324)).toThrow("too fine");
    expect(weighOut([1e6], 1e-4)).toEqual([1e6]);
    // Twelve digits count: the last of them is a tenth of a division here, and a whole one there.
    expect(weighOut([99_999_999_999], 1)).toEqual([99_999_999_999]);
    expect(() => weighOut([1e11], 1)).toThrow("too fine");
    expect(() => weighOut([1, -1], 1)).toThrow("weights: -1 is below 0");
    expect(weighOut([], 1)).toEqual([]);
  });
});

describe("inDivisions", () => {
  it("is rid of the noise of binary fractions, for a division without end too", () => {
    // In binary 3 x 0.1 is 0.30000000000000004 and 7 x 0.05 is 0.35000000000000003.
    expect([inDivisions(0.1)(3), inDivisions(0.05)(7), inDivisions(25)(4)]).toEqual([0.3, 0.35, 100]);
    // To the 15 digits that a spreadsheet keeps.
    expect([inDivisions(1 / 3)(2), inDivisions(1e-9)(3)]).toEqual([0.666666666666667, 3e-9]);
  });
});

describe("divisionsIn", () => {
  it("is rid of the noise of binary fractions, and loses no digit of a large number", () => {
    expect(divisionsIn(1.15, 0.1)).toBe(11.5); // 11.499999999999998 in binary
    expect(divisionsIn(-1.15, 0.1)).toBe(-11.5);
    expect(divisionsIn(123_456_789_012.5, 1)).toBe(123_456_789_012.5);
  });
});
