import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { lastPaid, lotPrice, stockValue } from "../../../src/runsheet/stock/lotPrice";
import { lotsOf } from "../../../src/runsheet/stock/lots";
import type { CellValue } from "../../../src/sheet/sheet";
import { DAY, ledgerFrom } from "./moved";

// Three lots: 100 at 1, 200 at 1.50 and 100 at 2 each, of which 150 went out oldest first: 150 of B and 100 of C left.
const ROWS: CellValue[][] = [
  [DAY, "Wax", "A", 100, 100],
  [DAY + 5, "Wax", "B", 200, 300],
  [DAY + 9, "Wax", "C", 100, 200],
  [DAY + 10, "Wax", "A", -100],
  [DAY + 10, "Wax", "B", -50],
];

describe("the price of a unit by the lots in stock", () => {
  it("is what the oldest cost, as far as they go, and beyond the stock what was paid last", () => {
    const price = (amount: number) => lotPrice(ledgerFrom(ROWS), "wax", "weight", "first in", amount)?.price;
    expect(price(0)).toBe(1.5);
    expect(price(100)).toBe(1.5);
    // 150 at 1.50 and 50 at 2.
    expect(price(200)).toBeCloseTo(325 / 200, 12);
    // 150 at 1.50, 100 at 2, and 50 more at the last price, 2.
    expect(price(300)).toBeCloseTo(525 / 300, 12);
  });

  it("is of two prices of one day that of the lower row, for it was written later", () => {
    const rows: CellValue[][] = [
      [DAY, "Wax", "A", 10, 30],
      [DAY, "Wax", "B", 10, 20],
    ];
    expect(lastPaid(ledgerFrom(rows), "Wax", "weight")).toBe(2);
    expect(lastPaid(ledgerFrom([...rows].reverse()), "Wax", "weight")).toBe(3);
    // Within a lot too, and a row without a day is before all others.
    const one = (...prices: CellValue[][]) =>
      lastPaid(ledgerFrom(prices.map(([day = null, paid = null]) => [day, "Wax", "A", 10, paid])), "Wax", "weight");
    expect([one([DAY, 30], [DAY, 20]), one([DAY, 30], [null, 20]), one([DAY, 30], [DAY - 1, 20])]).toEqual([2, 3, 3]);
  });

  it("is their mean, or what was paid last, as the setting says", () => {
    const ledger = ledgerFrom(ROWS);
    // 150 at 1.50 and 100 at 2 are 425 for 250.
    expect(lotPrice(ledger, "Wax", "weight", "average", 10)?.price).toBeCloseTo(425 / 250, 12);
    expect(lotPrice(ledger, "Wax", "weight", "last paid", 10)?.price).toBe(2);
    expect(lastPaid(ledgerFrom([...ROWS].reverse()), "Wax", "weight")).toBe(2);
  });

  it("is what was paid last where nothing is left, and unknown where nothing was ever paid", () => {
    const gone = ledgerFrom([
      [DAY, "Wax", "A", 10, 5],
      [DAY, "Wax", "A", -10],
    ]);
    for (const method of ["first in", "average", "last paid"] as const) {
      expect(lotPrice(gone, "Wax", "weight", method, 4)?.price).toBe(0.5);
    }
    expect(lotPrice(ledgerFrom([[DAY, "Wax", "A", 10]]), "Wax", "weight", "average", 1)).toBeUndefined();
  });

  it("takes a lot that nothing was written for at what was paid last, and names it", () => {
    const ledger = ledgerFrom([...ROWS, [DAY - 1, "Wax", "Gift", 50]]);
    expect(lotPrice(ledger, "Wax", "weight", "first in", 50)).toEqual({ price: 2, unpriced: ["Gift"] });
  });

  it("is by the unit asked for", () => {
    const ledger = ledgerFrom([[DAY, "Wax", "A", 2, 10]], "g", "kg");
    expect(lotPrice(ledger, "Wax", "weight", "average", 1)?.price).toBeCloseTo(0.005, 15);
    expect(lotPrice(ledger, "Wax", "count", "average", 1)?.price).toBe(5);
    expect(lotPrice(ledger, "Wax", "weight", "last paid", 1)?.price).toBeCloseTo(0.005, 15);
    expect(lotPrice(ledger, "Wax", "count", "last paid", 1)?.price).toBe(5);
  });
});

describe("the value of the stock", () => {
  it("names the lot that nothing was written for, and counts what is spent for nothing", () => {
    const ledger = ledgerFrom([
      [DAY, "Wax", "A", 10, 30],
      [DAY, "Wax", "Gift", 5],
      [DAY, "Oil", "F", 4, 40],
      [DAY, "Oil", "F", -4],
    ]);
    expect(stockValue(ledger, "average")).toEqual({
      items: [{ item: "Wax", value: 30 }],
      total: 30,
      unpriced: ["Wax, lot Gift"],
    });
    // At what was paid last the gift is worth as much as what was bought.
    expect(stockValue(ledger, "last paid")).toMatchObject({ total: 45 });
  });

  it("is what is left of each lot at what it cost", () => {
    const ledger = ledgerFrom([...ROWS, [DAY, "Lid", "L", 30, 6], [DAY, "Ribbon", "", 4]]);
    expect(stockValue(ledger, "first in")).toEqual({
      items: [
        { item: "Wax", value: 425 },
        { item: "Lid", value: expect.closeTo(6, 12) },
        { item: "Ribbon", value: 0 },
      ],
      total: expect.closeTo(431, 12),
      unpriced: ["Ribbon"],
    });
    expect(stockValue(ledger, "last paid").items[0]).toEqual({ item: "Wax", value: 500 });
  });

  it("and the cost of what was taken oldest first are together what was paid", () => {
    const receipt = fc.record({ quantity: fc.integer({ min: 1, max: 500 }), price: fc.integer({ min: 0, max: 90 }) });
    fc.assert(
      fc.property(fc.array(receipt, { minLength: 1, maxLength: 6 }), fc.nat(3000), (receipts, wish) => {
        const rows = receipts.map(({ quantity, price }, i): CellValue[] => [
          DAY + i,
          "Wax",
          `L${i}`,
          quantity,
          quantity * price,
        ]);
        const all = receipts.reduce((total, { quantity }) => total + quantity, 0);
        const taken = Math.min(wish, all);
        const cost = (lotPrice(ledgerFrom(rows), "Wax", "weight", "first in", taken)?.price ?? 0) * taken;
        // A use without a lot comes from the oldest.
        const after = ledgerFrom([...rows, [DAY + 99, "Wax", "", -taken]]);
        const paid = receipts.reduce((total, { quantity, price }) => total + quantity * price, 0);
        expect(stockValue(after, "first in").total + cost).toBeCloseTo(paid, 6);
        expect(lotsOf(after, "Wax", "weight").reduce((total, { quantity }) => total + quantity, 0)).toBe(all - taken);
      }),
      { numRuns: 200 },
    );
  });
});
