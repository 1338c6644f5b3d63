import fc from "fast-check";
import loadHighs from "highs";
import { describe, expect, it } from "vitest";
import { packCost } from "../../../src/core/buying/packCost";
import { type Pack, packPlan } from "../../../src/core/buying/packPlan";
import { planByBranches } from "../../../src/core/buying/planByBranches";
import { planByGrid } from "../../../src/core/buying/planByGrid";
import { planByRemainders } from "../../../src/core/buying/planByRemainders";
import { cases, slowIt } from "../../cases";

/** Cost, amount and number of packs of a plan: what a better plan has less of, the first first. */
const measures = (counts: readonly number[], packs: readonly Pack[]): [number, number, number] => {
  const total = (each: (pack: Pack) => number) =>
    counts.reduce((sum, count, i) => sum + count * each(packs[i] as Pack), 0);
  return [total(({ price }) => price), total(({ size }) => size), total(() => 1)];
};
const isLess = (a: readonly number[], b: readonly number[]): boolean => {
  const i = a.findIndex((value, k) => value !== b[k]);
  return i >= 0 && (a[i] as number) < (b[i] as number);
};

/** The best measures of all plans, by trying each one: whole needs, sizes and prices. */
function tryAll(need: number, packs: readonly Pack[]): number[] {
  let best = [Number.POSITIVE_INFINITY];
  const go = (counts: number[], left: number): void => {
    if (counts.length === packs.length) {
      const found = measures(counts, packs);
      if (left <= 0 && isLess(found, best)) best = found;
      return;
    }
    const { size } = packs[counts.length] as Pack;
    for (let count = 0; count <= Math.max(0, Math.ceil(left / size)); count++)
      go([...counts, count], left - count * size);
  };
  go([], need);
  return best;
}

const greatest = (a: number, b: number): number => (b === 0 ? a : greatest(b, a % b));
const whole = (min: number, max: number) => fc.integer({ min, max });
const packsOf = (size: fc.Arbitrary<number>, price: fc.Arbitrary<number>, least: number, most: number) =>
  fc.array(fc.record({ size, price }), { minLength: least, maxLength: most });

describe("packPlan", () => {
  it("is the best of all plans: cost, then left over, then packs", () => {
    // Prices near the sizes make many ties.
    const packs = packsOf(whole(1, 20), whole(0, 20), 1, 4);
    const proportional = packs.map((list) => list.map(({ size }) => ({ size, price: 2 * size })));
    fc.assert(
      fc.property(whole(0, 50), fc.oneof(packs, proportional), (need, list) => {
        expect(measures(packPlan(need, list), list)).toEqual(tryAll(need, list));
      }),
      { numRuns: cases(500, 2000) },
    );
  });

  it("costs what an integer-programming library finds, on random cases", async () => {
    const highs = await loadHighs();
    const anyPrice = packsOf(whole(1, 60_000), whole(1, 9_999), 1, 12);
    const nearPrice = packsOf(whole(100, 60_000), whole(95, 130), 1, 12).map((list) =>
      list.map(({ size, price }) => ({ size, price: Math.ceil((size * price) / 1000) })),
    );
    fc.assert(
      fc.property(whole(1, 1_000_000), fc.oneof(anyPrice, nearPrice), (need, list) => {
        const line = (of: (pack: Pack) => number) => list.map((pack, i) => `${of(pack)} x${i}`).join(" + ");
        const names = list.map((_, i) => `x${i}`).join(" ");
        const problem = `Minimize\n obj: ${line(({ price }) => price)}\nSubject To\n c: ${line(({ size }) => size)} >= ${need}\nGeneral\n ${names}\nEnd`;
        const solved = highs.solve(problem, { output_flag: false, mip_rel_gap: 0, mip_abs_gap: 0 });
        expect(solved.Status).toBe("Optimal");
        const theirs = list.map((_, i) => Math.round((solved.Columns[`x${i}`] as { Primal: number }).Primal));
        const hundredths = list.map(({ size, price }) => ({ size: size / 100, price: price / 100 }));
        const [cost, amount] = measures(packPlan(need / 100, hundredths), list);
        expect(amount).toBeGreaterThanOrEqual(need);
        expect(measures(theirs, list)[1]).toBeGreaterThanOrEqual(need);
        expect(cost).toBe(measures(theirs, list)[0]);
      }),
      { numRuns: cases(30, 1000) },
    );
  });

  it("finds the same by remainders as by the grid, ties too, and leaves small needs to it", () => {
    let found = 0;
    const price = fc.oneof(whole(0, 300), fc.constant(7));
    fc.assert(
      fc.property(whole(1, 20_000), packsOf(whole(1, 900), price, 1, 6), fc.boolean(), (need, list, isEven) => {
        const step = list.map(({ size }) => size).reduce(greatest);
        const packs = list.map(({ size, price }) => ({ size: size / step, price: isEven ? size : price }));
        const task = {
          need: BigInt(need),
          packs: packs.map(({ size, price }) => ({ size: BigInt(size), price: BigInt(price) })),
        };
        const plan = planByRemainders(task, 1e9);
        if (!plan) return;
        found++;
        expect(measures(plan, packs)).toEqual(measures(planByGrid(task, 1e9) as number[], packs));
      }),
      { numRuns: cases(300, 3000), seed: 1 },
    );
    expect(found).toBeGreaterThan(cases(200, 2000));
  });

  slowIt("answers 12 sizes in hundredths and thousandths at one price a gram, and at nearly one", () => {
    const sizes = [2001.11, 2287.77, 2599.99, 2800.11, 3001.11, 3333.11, 3600.77, 3901.99, 4199.99, 4500.77, 4777.77];
    for (const [parts, of] of [
      [100, (size: number) => size / 50],
      [100, (size: number) => Math.round(size * 2) / 100],
      [1000, (size: number, i: number) => (size + i / 1000) / 50],
    ] as const) {
      const packs = sizes.map((size, i) => ({ size: parts === 100 ? size : size + i / 1000, price: of(size, i) }));
      const whole = packs.map(({ size, price }) => ({ size: Math.round(size * parts), price }));
      const [, amount] = measures(packPlan(1_000_000, packs), whole);
      expect(amount).toBe(1_000_000 * parts);
    }
  });

  it("answers 12 sizes in tenths at one price a gram for a million grams", () => {
    // No plan costs less than the need at that price, and one that covers it to a tenth costs no more.
    const sizes = [2001.1, 2287.7, 2599.9, 2800.1, 3001.1, 3333.1, 3600.7, 3901.9, 4199.9, 4500.7, 4777.7, 4999.9];
    const packs = sizes.map((size) => ({ size, price: size / 50 }));
    for (const need of [1_000_000, 999_999.9, 12_345_678.9]) {
      const tenths = packs.map(({ size, price }) => ({ size: Math.round(size * 10), price: Math.round(price * 500) }));
      const [cost, amount] = measures(packPlan(need, packs), tenths);
      expect([cost, amount]).toEqual([Math.round(need * 10), Math.round(need * 10)]);
    }
  });

  it("finds the same by branches as by the grid, ties and long prices too", () => {
    const price = fc.oneof(whole(0, 5_000), fc.bigInt({ min: 10n ** 18n, max: 10n ** 18n + 3n }).map(Number));
    fc.assert(
      fc.property(whole(1, 30_000), packsOf(whole(1, 900), price, 1, 6), fc.boolean(), (need, list, isEven) => {
        const packs = list.map(({ size, price }) => ({
          size: BigInt(size),
          price: isEven ? BigInt(size) * 7n : BigInt(price),
        }));
        const task = { need: BigInt(need), packs };
        const [branches, grid] = [planByBranches(task, 200_000), planByGrid(task, 1e9)];
        fc.pre(branches !== undefined);
        const exact = (counts: readonly number[] | undefined) => {
          const total = (each: (pack: (typeof packs)[number]) => bigint) =>
            packs.reduce((sum, pack, i) => sum + BigInt(counts?.[i] ?? 0) * each(pack), 0n);
          return [total(({ price }) => price), total(({ size }) => size), total(() => 1n)].join();
        };
        expect(exact(grid)).toBe(exact(branches));
      }),
      { numRuns: cases(300, 3000) },
    );
  });

  it("gives up by branches rather than answer wrong, and leaves it to the grid", () => {
    const packs = [31, 37, 41, 43, 47].map((size) => ({ size: BigInt(size), price: BigInt(size) }));
    expect(planByBranches({ need: 99_999n, packs }, 5)).toBeUndefined();
    expect(planByRemainders({ need: 99_999n, packs }, 100)).toBeUndefined();
    expect(planByGrid({ need: 99_999n, packs }, 1_000)).toBeUndefined();
    expect(planByGrid({ need: 5n, packs: [{ size: 2n ** 60n, price: 1n }] }, 1_000)).toBeUndefined();
  });

  it("counts decimals as written: 0.1 + 0.2 is covered by three packs of 0.1", () => {
    expect(packPlan(0.1 + 0.2, [{ size: 0.1, price: 1 }])).toEqual([3]);
    expect(packPlan(1.15, [{ size: 0.23, price: 0.7 }])).toEqual([5]);
    expect(packPlan(0.3001, [{ size: 0.1, price: 1 }])).toEqual([4]);
  });

  it("buys no pack more for the noise of binary fractions in a need", () => {
    // Ten thousand weights of 0.1 added up one by one come to 1000.0000000001588, by hand 1000.
    const need = Array<number>(10_000)
      .fill(0.1)
      .reduce((total, one) => total + one);
    expect(need).toBeGreaterThan(1000);
    expect(packPlan(need, [{ size: 1000, price: 9 }])).toEqual([1]);
    expect(packPlan(1000.00001, [{ size: 1000, price: 9 }])).toEqual([2]);
  });

  it("plans pounds beside kilograms in grams, where decimals make a fine grid", () => {
    const packs = [453.59237, 1000, 4535.9237, 10_000].map((size) => ({ size, price: Math.round(size * 1.3) / 100 }));
    const plan = packPlan(47_350.6, packs);
    const scaled = packs.map(({ size, price }) => ({ size: Math.round(size * 1e5), price: Math.round(price * 100) }));
    expect(measures(plan, scaled)).toEqual(tryAll(4_735_060_000, scaled));
  });

  slowIt("answers a need of a million divisions and 12 packs, whatever the prices", () => {
    const sizes = [20011, 22877, 25999, 28001, 30011, 33331, 36007, 39019, 41999, 45007, 47777, 49999];
    const prices: ((size: number, i: number) => number)[] = [
      (size) => size / 100,
      (size) => size / 3,
      (size) => size * Math.SQRT2,
      (size, i) => size / 100 + i / 7,
      () => 9.99,
      () => 0,
    ];
    for (const price of prices) {
      const packs = sizes.map((size, i) => ({ size, price: price(size, i) }));
      const amount = measures(packPlan(1_000_000, packs), packs)[1];
      expect(amount).toBeGreaterThanOrEqual(1_000_000);
    }
  });

  it("says so when it cannot be sure", () => {
    const sizes = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12].map((n) => Math.sqrt(n * 7.123));
    const packs = sizes.map((size) => ({ size, price: size }));
    expect(() => packPlan(9876.54321, packs)).toThrow("sizes: too many plans come close");
  });

  it("buys nothing for no need, takes free packs, and refuses what is no pack", () => {
    expect(packPlan(0, [{ size: 5, price: 1 }])).toEqual([0]);
    expect(packPlan(0, [])).toEqual([]);
    expect(
      packPlan(9, [
        { size: 5, price: 1 },
        { size: 4, price: 0 },
      ]),
    ).toEqual([0, 3]);
    expect(() => packPlan(9, [])).toThrow("no pack has both a size and a price");
    expect(() => packPlan(9, [{ size: 0, price: 1 }])).toThrow("sizes: 0 is not above 0");
    expect(() => packPlan(9, [{ size: 5, price: -1 }])).toThrow("prices: -1 is below 0");
    expect(() => packPlan(-9, [{ size: 5, price: 1 }])).toThrow("need: -9 is below 0");
  });
});

describe("packCost", () => {
  it("adds prices as decimals: three packs at 12.99 cost 38.97", () => {
    expect(packCost(3, [{ size: 1, price: 12.99 }])).toBe(38.97);
    expect(packCost(0, [])).toBe(0);
  });

  it("refuses at once more packs than can be counted, beside others too", () => {
    for (const size of [1e-153, 1e-200, 5e-324]) {
      for (const work of [packPlan, packCost]) {
        expect(() => work(1, [{ size, price: 1 }])).toThrow("sizes: too many packs to count");
        // These kept searching numbers of hundreds of digits.
        const beside = [0, 5].map((price) => ({ size: 5 + price / 7, price }));
        expect(() => work(1e6, [{ size, price: 0 }, ...beside])).toThrow("sizes: too many packs to count");
      }
    }
    // What is needed may be the noise of a sum.
    expect(packPlan(1e-13, [{ size: 5000, price: 9 }])).toEqual([1]);
  });

  it("is the price of the plan in whole cents", () => {
    const packs = packsOf(whole(1, 500), whole(0, 9_999), 1, 5);
    fc.assert(
      fc.property(whole(0, 20_000), packs, (need, cents) => {
        const money = cents.map(({ size, price }) => ({ size, price: price / 100 }));
        expect(Math.round(packCost(need, money) * 100)).toBe(measures(packPlan(need, money), cents)[0]);
      }),
      { numRuns: cases(300, 3000) },
    );
  });
});
