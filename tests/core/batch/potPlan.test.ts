import { describe, expect, it } from "vitest";
import { type Order, potPlan } from "../../../src/core/batch/potPlan";
import { slowIt } from "../../cases";
import { demoDay, longTable, triplets, u120 } from "./inputs";

const ordersOf = (weights: readonly number[], counts: readonly number[]): Order[] =>
  weights.map((fill, i) => ({ vessel: `vessel ${i}`, fill, quantity: counts[i] as number }));

describe("potPlan", () => {
  it("turns the pots into rows, the fullest first", () => {
    const plan = potPlan(
      [
        { vessel: "Tin", fill: 200, quantity: 4 },
        { vessel: "Jar", fill: 300, quantity: 2 },
      ],
      1000,
    );
    expect(plan.bound).toBe(2);
    expect(plan.pots.map(({ weight }) => weight)).toEqual([800, 600]);
    const poured = plan.pots.flatMap(({ rows }) => rows);
    expect(poured.every(({ weight, count, order }) => weight === count * (order === 0 ? 200 : 300))).toBe(true);
    expect(poured.filter(({ vessel }) => vessel === "Tin").reduce((sum, { count }) => sum + count, 0)).toBe(4);
    expect(poured.filter(({ vessel }) => vessel === "Jar").reduce((sum, { count }) => sum + count, 0)).toBe(2);
  });

  it("melts the loss too, and a pot may be full with it", () => {
    const day = { fills: demoDay.weights.map((weight) => weight / 1.03), counts: demoDay.counts };
    const plan = potPlan(ordersOf(day.fills, day.counts), demoDay.capacity, 0.03);
    const poured = day.fills.reduce((sum, fill, i) => sum + fill * (day.counts[i] as number), 0);
    expect(plan.pots.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(poured * 1.03, 6);
    expect(plan.pots.length).toBe(Math.ceil((poured * 1.03) / demoDay.capacity));
    expect(potPlan(ordersOf([21.57], [10]), 21.57 * 10 * 1.03, 0.03).pots.length).toBe(1);
  });

  it("leaves out orders of nothing, whatever their fill", () => {
    const plan = potPlan(ordersOf([0, 5000, 200], [0, 0, 1]), 1000);
    expect(plan.refused).toEqual([]);
    expect(plan.pots.map(({ rows }) => rows.map(({ order }) => order))).toEqual([[2]]);
    expect(potPlan([], 1000)).toEqual({ pots: [], bound: 0, refused: [] });
  });

  it("refuses what cannot be poured by name, and plans the rest", () => {
    const plan = potPlan(ordersOf([1200, 0, 200, 200, 1000 * (1 + 5e-13)], [1, 1, 1.5, -1, 1]), 1000);
    expect(plan.refused.map(({ order, fault }) => [order, fault.kind])).toEqual([
      [0, "none"],
      [1, "value"],
      [2, "value"],
      [3, "value"],
    ]);
    expect(plan.refused[0]?.fault.message).toContain("vessel 0: one candle takes 1200 and the pot holds 1000");
    expect(plan.pots.length).toBe(1);
  });

  it("says of a candle that no pot holds what it takes, in which unit, and what to do", () => {
    // By hand: 205 and 3 % of it are 211.15.
    const said = (loss: number, unit?: string) =>
      potPlan([{ vessel: "Jar", fill: 205, quantity: 2 }], 200, loss, undefined, unit).refused[0]?.fault.sentence;
    expect(said(0.03)).toBe(
      "one candle takes 211.15 with its loss and the pot holds 200, in the unit of the fills; take a larger pot, or write both in one unit",
    );
    expect(said(0.03, "g")).toBe("one candle takes 211.15 g with its loss and the pot holds 200 g; take a larger pot");
    expect(said(0, "oz")).toBe("one candle takes 205 oz and the pot holds 200 oz; take a larger pot");
  });

  it("takes a quantity that binary fractions have blurred as the whole number it is", () => {
    const { pots, refused } = potPlan(ordersOf([10, 10], [100 * 1.1, 0.3 / 0.1]), 1130); // 110.00000000000001 and 2.9999999999999996
    expect(refused).toEqual([]);
    expect(pots[0]?.rows.map(({ count, weight }) => [count, weight])).toEqual([
      [110, 1100],
      [3, 30],
    ]);
  });

  it("takes a hundred thousand candles and no more", () => {
    expect(potPlan(ordersOf([1, 1], [60_000, 40_000]), 30).pots.length).toBe(Math.ceil(100_000 / 30));
    expect(() => potPlan(ordersOf([1, 1], [60_000, 40_001]), 30)).toThrow("quantities: 100001 candles in all");
  });

  it("takes ten million fills times pots and no more", () => {
    const fills = (some: number) => Array.from({ length: some }, (_, i) => 400 + i / 100);
    const plan = (some: number) =>
      potPlan(
        ordersOf(
          fills(some),
          fills(some).map(() => 2),
        ),
        1000,
      );
    // Two of these candles fill a pot: as many pots as fills.
    expect(plan(2000).pots.length).toBe(2000);
    expect(() => plan(3500)).toThrow("quantities: 3500 fills in 2923 pots or more are too many for one plan");
  });

  it("says how far from the fewest it may be when it is stopped", () => {
    const { weights, counts, capacity } = triplets(1);
    const plan = potPlan(ordersOf(weights, counts), capacity, 0, { steps: 1000 });
    expect(plan.bound).toBe(40);
    expect(plan.pots.length).toBeGreaterThan(40);
  });

  slowIt("plans 120 candles and a thousand rows", () => {
    const { weights, counts, capacity } = u120[8] as (typeof u120)[number];
    const plan = potPlan(ordersOf(weights, counts), capacity);
    expect([plan.pots.length, plan.bound]).toEqual([50, 50]);
    const long = longTable(1, 10);
    const { pots } = potPlan(ordersOf(long.weights, long.counts), long.capacity);
    const poured = long.counts.map(() => 0);
    for (const { rows } of pots) for (const { order, count } of rows) poured[order] = (poured[order] as number) + count;
    expect(poured).toEqual(long.counts);
    expect(pots.every(({ weight }, i) => i === 0 || weight <= (pots[i - 1]?.weight as number))).toBe(true);
  });
});
