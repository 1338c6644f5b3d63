import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Need, orderPlan } from "../../../src/core/buying/orderPlan";

const offer = (supplier: string, size: number, price: number) => ({ supplier, size, price });

/** What counts of packs cost with their deliveries, in cents. */
function costOf(needs: readonly Need[], delivery: ReadonlyMap<string, number>, counts: readonly (readonly number[])[]) {
  const orders = new Set<string>();
  let cost = 0;
  for (const [n, { offers }] of needs.entries()) {
    for (const [i, { supplier, price }] of offers.entries()) {
      const count = counts[n]?.[i] ?? 0;
      cost += count * Math.round(price * 100);
      if (count > 0) orders.add(supplier);
    }
  }
  for (const supplier of orders) cost += Math.round((delivery.get(supplier) ?? 0) * 100);
  return cost;
}

describe("orders with their delivery", () => {
  it("go to one supplier where two deliveries cost more than the cheaper pack saves", () => {
    const needs = [
      { need: 900, offers: [offer("North", 1000, 9), offer("South", 1000, 10)] },
      { need: 40, offers: [offer("South", 50, 7)] },
    ];
    // 9 + 7 and two deliveries of 5 are 26; 10 + 7 and one are 22.
    expect(
      orderPlan(
        needs,
        new Map([
          ["North", 5],
          ["South", 5],
        ]),
      ),
    ).toEqual([[0, 1], [1]]);
    expect(orderPlan(needs, new Map([["South", 5]]))).toEqual([[1, 0], [1]]);
    expect(orderPlan(needs, new Map())).toEqual([[1, 0], [1]]);
  });

  it("need nothing for no need, and refuse more suppliers than can be compared", () => {
    expect(orderPlan([], new Map())).toEqual([]);
    const many = Array.from({ length: 13 }, (_, i) => `S${i}`);
    const delivery = new Map(many.map((one) => [one, 1]));
    expect(() => orderPlan([{ need: 1, offers: many.map((one) => offer(one, 1, 1)) }], delivery)).toThrow(
      "13 suppliers",
    );
  });

  it("cost the least of all that cover the needs", () => {
    const suppliers = ["N", "S", "W"];
    const someOffer = fc.record({
      supplier: fc.constantFrom(...suppliers),
      size: fc.integer({ min: 1, max: 5 }),
      price: fc.integer({ min: 0, max: 9 }),
    });
    const someNeeds = fc.array(
      fc.record({ need: fc.integer({ min: 1, max: 6 }), offers: fc.array(someOffer, { minLength: 1, maxLength: 3 }) }),
      { minLength: 1, maxLength: 2 },
    );
    fc.assert(
      fc.property(
        someNeeds,
        fc.array(fc.integer({ min: 0, max: 9 }), { minLength: 3, maxLength: 3 }),
        (needs, fees) => {
          const delivery = new Map(suppliers.map((one, i) => [one, fees[i] as number]));
          const found = orderPlan(needs, delivery);
          for (const [n, { need, offers }] of needs.entries()) {
            expect(offers.reduce((sum, { size }, i) => sum + size * (found[n]?.[i] ?? 0), 0)).toBeGreaterThanOrEqual(
              need,
            );
          }
          // Every way to cover, by trying all counts: nobody needs more than 6 of a pack.
          const covers = needs.map(({ need, offers }) => {
            const all = offers.reduce<number[][]>(
              (rows) => rows.flatMap((row) => [0, 1, 2, 3, 4, 5, 6].map((count) => [...row, count])),
              [[]],
            );
            return all.filter(
              (counts) => counts.reduce((sum, count, i) => sum + count * (offers[i]?.size ?? 0), 0) >= need,
            );
          });
          const [first = [], second] = covers;
          let least = Number.POSITIVE_INFINITY;
          for (const a of first) {
            for (const b of second ?? [undefined]) {
              least = Math.min(least, costOf(needs, delivery, b ? [a, b] : [a]));
            }
          }
          expect(costOf(needs, delivery, found)).toBe(least);
        },
      ),
      { numRuns: 60 },
    );
  });
});
