import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Lot, stockCost } from "../../../src/core/cost/stockCost";

// OpenStax, Principles of Accounting, volume 1, inventory: 150 at 21, sell 120; buy 225 at 27, sell 180; buy 210 at 33.
const LOTS = [
  { quantity: 150, unitPrice: 21 },
  { quantity: 225, unitPrice: 27 },
  { quantity: 210, unitPrice: 33 },
];

describe("stockCost", () => {
  it("costs 7,200 first in, first out, and leaves 8,955 (OpenStax)", () => {
    expect(stockCost(LOTS, 300)).toBe(7200);
    expect(stockCost(LOTS, 585) - stockCost(LOTS, 300)).toBe(8955);
  });

  it("takes the periodic average of 27.615385 a unit (OpenStax, recomputed)", () => {
    expect(stockCost(LOTS, 1, "average")).toBeCloseTo(27.615385, 6);
    expect(stockCost(LOTS, 300, "average")).toBeCloseTo(300 * (16_155 / 585), 9);
  });

  it("makes the moving average, sale after sale: 7,252.94 used and 8,902.06 left (OpenStax, recomputed)", () => {
    let stock: Lot = { quantity: 0, unitPrice: 0 };
    let used = 0;
    for (const [i, sold] of [120, 180, 0].entries()) {
      const lots = [stock, LOTS[i] as Lot];
      used += stockCost(lots, sold, "average");
      const quantity = stock.quantity + (LOTS[i] as Lot).quantity - sold;
      stock = { quantity, unitPrice: stockCost(lots, 1, "average") };
    }
    expect(used).toBeCloseTo(7252.94, 2);
    expect(stock.quantity * stock.unitPrice).toBeCloseTo(8902.06, 2);
    expect(stock.unitPrice).toBeCloseTo(31.235294, 6);
  });

  it("takes unit after unit from the oldest lot that has any", () => {
    const lot = fc.record({ quantity: fc.integer({ min: 0, max: 30 }), unitPrice: fc.integer({ min: 0, max: 500 }) });
    fc.assert(
      fc.property(fc.array(lot, { maxLength: 6 }), fc.nat(200), (lots, used) => {
        const units = lots.flatMap(({ quantity, unitPrice }) => Array<number>(quantity).fill(unitPrice));
        if (used > units.length) {
          expect(() => stockCost(lots, used)).toThrow(`used: ${used} is more than the ${units.length} in stock`);
          expect(() => stockCost(lots, used, "average")).toThrow("in stock");
          return;
        }
        const total = (prices: number[]) => prices.reduce((sum, price) => sum + price, 0);
        expect(stockCost(lots, used)).toBe(total(units.slice(0, used)));
        const mean = units.length > 0 ? total(units) / units.length : 0;
        expect(stockCost(lots, used, "average")).toBeCloseTo(mean * used, 8);
      }),
    );
  });

  it("lets a stock be used up to the last decimal", () => {
    const tenth = { quantity: 0.1, unitPrice: 10 };
    expect(stockCost([tenth, tenth, tenth], 0.3)).toBeCloseTo(3, 12);
    expect(stockCost([{ quantity: 0.3, unitPrice: 10 }], 0.1 + 0.2)).toBeCloseTo(3, 12);
    expect(() => stockCost([tenth], 0.1001)).toThrow("more than the 0.1 in stock");
  });

  it("refuses what is no stock", () => {
    expect(() => stockCost([{ quantity: -1, unitPrice: 1 }], 0)).toThrow("quantities: -1 is below 0");
    expect(() => stockCost([{ quantity: 1, unitPrice: -1 }], 0)).toThrow("unitPrices: -1 is below 0");
    expect(() => stockCost(LOTS, -1)).toThrow("used: -1 is below 0");
    expect(() => stockCost(LOTS, 1, "lifo")).toThrow('method: "lifo" is not known here; write first in or average');
  });
});
