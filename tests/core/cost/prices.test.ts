import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { askPrice } from "../../../src/core/cost/askPrice";
import { breakEven } from "../../../src/core/cost/breakEven";
import { candleCost } from "../../../src/core/cost/candleCost";
import { marginOf } from "../../../src/core/cost/marginOf";

const money = fc.double({ min: 0.01, max: 1e6, noNaN: true });
const share = fc.double({ min: 0, max: 0.49, noNaN: true });

describe("askPrice and marginOf", () => {
  it("a margin of 33.33 % turns a cost of 40 into 60 (OpenStax: 50 % markup)", () => {
    expect(marginOf(60, 40)).toBeCloseTo(1 / 3, 15);
    expect(askPrice(40, 1 / 3)).toBeCloseTo(60, 12);
  });

  // OpenStax: cost 10 and 12 at 30 % markup sell at 13 and 15.60; that markup is a margin of 0.3 / 1.3.
  it.each([
    [10, 13],
    [12, 15.6],
  ])("a cost of %d at 30 %% markup sells at %d", (cost, price) => {
    expect(askPrice(cost, 0.3 / 1.3)).toBeCloseTo(price, 12);
    expect(marginOf(price, cost)).toBeCloseTo(0.3 / 1.3, 14);
  });

  it("are each other's way back", () => {
    fc.assert(
      fc.property(money, share, share, fc.double({ min: 0, max: 100, noNaN: true }), (cost, margin, rate, fixed) => {
        const price = askPrice(cost, margin, rate, fixed);
        expect(Math.abs(marginOf(price, cost, rate, fixed) - margin)).toBeLessThan(1e-12);
        // What is paid is what is kept, spent and given away.
        expect(price * (margin + rate) + cost + fixed).toBeCloseTo(price, 6);
      }),
      { numRuns: 1000 },
    );
  });

  it("says when margin and fees leave nothing", () => {
    expect(() => askPrice(5, 0.6, 0.4)).toThrow(
      "margin: 60 % and a fee of 40 % leave nothing for the cost; keep the two below 100 %",
    );
    for (let p = 1; p < 100; p++) expect(() => askPrice(5, p / 100, (100 - p) / 100)).toThrow("leave nothing");
    expect(() => askPrice(5, 60)).toThrow("margin: 60 means 6000 %; write 60% or 0.6");
    expect(() => askPrice(5, 0.6, 3)).toThrow("feeRate: 3 means 300 %; write 3% or 0.03");
    expect(() => askPrice(-5, 0.6)).toThrow("cost: -5 is below 0");
    expect(() => marginOf(0, 5)).toThrow("price: 0 is not above 0");
    expect(marginOf(10, 12)).toBeCloseTo(-0.2, 15);
  });
});

describe("breakEven", () => {
  // OpenStax, Principles of Accounting, volume 2: fixed costs, price, variable cost, units.
  it.each([
    [18_000, 100, 20, 225],
    [2_475, 3.75, 1.5, 1_100],
    [23_000, 125, 98, 852],
  ])("fixed costs of %d at %d and %d each take %d units", (fixed, price, cost, units) => {
    expect(breakEven(fixed, price, cost)).toBe(units);
  });

  it("is the first number of units that pays, in whole cents", () => {
    const cents = (max: number) => fc.integer({ min: 0, max });
    fc.assert(
      fc.property(
        cents(1e8),
        cents(20_000),
        cents(20_000),
        cents(500),
        fc.integer({ min: 0, max: 99 }),
        (fixed, price, cost, fee, percent) => {
          fc.pre(price > 0);
          const each = price * (100 - percent) - (fee + cost) * 100; // hundredths of a cent, exactly
          const work = () => breakEven(fixed / 100, price / 100, cost / 100, percent / 100, fee / 100);
          if (each < 0) expect(work).toThrow("price: each one sold loses");
          else if (each === 0) expect(work).toThrow("price: each one sold brings nothing");
          else expect(work()).toBe(Number((BigInt(fixed) * 100n + BigInt(each) - 1n) / BigInt(each)));
        },
      ),
      { numRuns: 2000 },
    );
  });

  it("does not count binary dust as a unit, nor as money", () => {
    expect(breakEven(1100.0000000001, 2, 1)).toBe(1100);
    expect(breakEven(1100.001, 2, 1)).toBe(1101);
    // 100 / (1000.3 - 1000.2), by hand 1000: in binary the difference is 0.09999999999990905.
    expect(breakEven(100, 1000.3, 1000.2)).toBe(1000);
    // By hand: 93.77 less 74 % leaves 24.3802, less 2.98 and 21.40 leaves 0.0002, of which 429070.21 is 2145351050.
    expect(breakEven(429070.21, 93.77, 21.4, 0.74, 2.98)).toBe(2145351050);
    expect(() => breakEven(100, 3.3, 2.97, 0.1)).toThrow("each one sold brings nothing");
    expect(() => breakEven(100, 0.05, 0.04, 0.2)).toThrow("each one sold brings nothing");
    expect(breakEven(0, 2, 1)).toBe(0);
    expect(() => breakEven(-1, 2, 1)).toThrow("fixed: -1 is below 0");
  });
});

describe("candleCost", () => {
  it("adds up by hand", () => {
    // 200 x 0.01 + 12 x 0.05 + 1.5 + 0.4 + 1 = 5.5, of which 98 % can be sold.
    const ingredients = [
      { weight: 200, unitPrice: 0.01 },
      { weight: 12, unitPrice: 0.05 },
    ];
    expect(candleCost(ingredients, [1.5, 0.4], 1, 0.02)).toBeCloseTo(5.5 / 0.98, 14);
    expect(candleCost(ingredients)).toBeCloseTo(2.6, 14);
    expect(candleCost([], [1.5])).toBe(1.5);
  });

  it("pays for a batch with what the good candles cost", () => {
    const list = fc.array(
      fc.record({ weight: fc.integer({ min: 0, max: 999 }), unitPrice: fc.integer({ min: 0, max: 99 }) }),
      { minLength: 1 },
    );
    fc.assert(
      fc.property(
        list,
        fc.array(fc.nat(500)),
        fc.nat(900),
        fc.integer({ min: 0, max: 99 }),
        (ingredients, parts, labour, rejects) => {
          const made = [...ingredients.map(({ weight, unitPrice }) => weight * unitPrice), ...parts, labour];
          const batch = 100 * made.reduce((sum, value) => sum + value, 0);
          expect(candleCost(ingredients, parts, labour, rejects / 100) * (100 - rejects)).toBeCloseTo(batch, 5);
        },
      ),
    );
  });

  it("refuses what has no cost", () => {
    expect(() => candleCost([])).toThrow("weights: nothing to cost");
    expect(() => candleCost([{ weight: -1, unitPrice: 1 }])).toThrow("weights: -1 is below 0");
    expect(() => candleCost([{ weight: 1, unitPrice: -1 }])).toThrow("unitPrices: -1 is below 0");
    expect(() => candleCost([], [-1])).toThrow("parts: -1 is below 0");
    expect(() => candleCost([], [1], -1)).toThrow("labour: -1 is below 0");
    expect(() => candleCost([], [1], 0, 2)).toThrow("rejectRate: 2 means 200 %; write 2% or 0.02");
  });
});
