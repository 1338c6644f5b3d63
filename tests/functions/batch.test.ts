import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { packPots } from "../../src/core/batch/packPots";
import { fours } from "../core/batch/inputs";
import { call, cell, down, messageOf } from "./built";

type Row = [number, string, number, number];

describe("POTPLAN and POTCOUNT", () => {
  it("plans by hand: four of 200 and two of 300 in pots of 1000", () => {
    expect(cell("POTCOUNT", down(200, 300), down(4, 2), 1000)).toBe(2);
    // Each vessel fits one pot: neither is split.
    expect(call("POTPLAN", down("Tin", "Jar"), down(200, 300), down(4, 2), 1000)).toEqual([
      [1, "Tin", 4, 800],
      [2, "Jar", 2, 600],
    ]);
  });
  it("fills a pot to its capacity exactly, in decimals too", () => {
    expect(cell("POTCOUNT", down(0.1), down(3), 0.3)).toBe(1);
    expect(call("POTPLAN", down("A"), down(0.1), down(3), 0.3)).toEqual([[1, "A", 3, 0.3]]);
    expect(cell("POTCOUNT", down(21.57), down(30), 21.57 * 30)).toBe(1);
    expect(cell("POTCOUNT", down(100), down(10), 1030, 0.03)).toBe(1);
    expect(cell("POTCOUNT", down(100), down(10), 1029.999, 0.03)).toBe(2);
  });
  it("plans no more candles than a spreadsheet lists the pots of without waiting", () => {
    expect(cell("POTCOUNT", down(600), down(100_000), 1000)).toBe(100_000);
    expect(messageOf(cell("POTPLAN", down("Tin"), down(600), down(100_001), 1000))).toBe(
      "quantities: 100001 candles in all; a plan takes at most 100000",
    );
  });
  it("adds the loss to what is melted", () => {
    const rows = call("POTPLAN", down("Tin"), down(200), down(4), 1000, 0.03) as Row[];
    expect(rows).toEqual([[1, "Tin", 4, 824]]);
  });
  it("pours every candle once, in no pot beyond its capacity, the fullest first", () => {
    const order = fc.record({ fill: fc.integer({ min: 50, max: 900 }), quantity: fc.integer({ min: 0, max: 15 }) });
    fc.assert(
      fc.property(fc.array(order, { minLength: 1, maxLength: 6 }), fc.constantFrom(0, 0.03, 0.1), (orders, loss) => {
        fc.pre(orders.some(({ quantity }) => quantity > 0));
        const names = orders.map((_, i) => `v${i}`);
        const fills = down(...orders.map(({ fill }) => fill));
        const quantities = down(...orders.map(({ quantity }) => quantity));
        const rows = call("POTPLAN", down(...names), fills, quantities, 1000, loss) as Row[];
        const weights = new Map<number, number>();
        const poured = new Map<string, number>();
        for (const [pot, vessel, count, weight] of rows) {
          const { fill } = orders[names.indexOf(vessel)] as { fill: number };
          expect(weight).toBeCloseTo(count * fill * (1 + loss), 8);
          weights.set(pot, (weights.get(pot) ?? 0) + weight);
          poured.set(vessel, (poured.get(vessel) ?? 0) + count);
        }
        const pots = [...weights.values()];
        expect([...weights.keys()]).toEqual(pots.map((_, i) => i + 1));
        expect(pots.every((weight) => weight <= 1000 * (1 + 1e-12))).toBe(true);
        for (const [i, weight] of pots.entries()) expect(weight).toBeGreaterThan((pots[i + 1] ?? 0) - 1e-9);
        for (const [i, { quantity }] of orders.entries()) expect(poured.get(names[i] as string) ?? 0).toBe(quantity);
        expect(cell("POTCOUNT", fills, quantities, 1000, loss)).toBe(pots.length);
      }),
      { numRuns: 200 },
    );
  });
  it("ends a hard search early and keeps the best plan found", () => {
    const { weights, counts, capacity } = fours(50);
    const short = packPots(weights, counts, capacity).pots.length;
    const rows = call("POTPLAN", down(...weights.map(() => "V")), down(...weights), down(...counts), capacity) as Row[];
    expect(short).toBeGreaterThan(40);
    const poured = rows.slice(0, -1);
    expect(Math.max(...poured.map(([pot]) => pot))).toBe(short);
    expect(poured.reduce((candles, [, , count]) => candles + count, 0)).toBe(160);
    // 40 pots: what the fours were made from, and the sum of the sizes.
    expect(rows.at(-1)).toEqual(["", `${short} pots; as few as 40 could not be ruled out`, "", ""]);
    expect(cell("POTCOUNT", down(...weights), down(...counts), capacity)).toBe(short);
  });
  it("names the candle that no pot holds and plans the others", () => {
    const rows = call("POTPLAN", down("Tin", "Tub"), down(200, 5000), down(2, 1), 1000);
    expect(messageOf(rows[0]?.[0], "#N/A")).toContain("Tub");
    expect(rows[0]?.slice(1, 3)).toEqual(["Tub", 1]);
    expect(rows.slice(1)).toEqual([[1, "Tin", 2, 400]]);
    expect(messageOf(cell("POTCOUNT", down(200, 5000), down(2, 1), 1000), "#N/A")).toContain("row 2");
    expect(messageOf(cell("POTCOUNT", down(200, "x"), down(2, 1), 1000))).toContain(
      'row 2 of the range: fills: "x" is text',
    );
  });
  it("leaves out blank and zero quantities", () => {
    const rows = call("POTPLAN", down("A", "B", "C"), down(200, null, 300), down(2, null, 0), 1000);
    expect(call("POTPLAN", down("A", "B", "C"), down(200, null, "x"), down(2, 0, 0), 1000)).toEqual(rows);
    expect(cell("POTCOUNT", down(200, null), down(2, 0), 1000)).toBe(1);
    expect(rows).toEqual([[1, "A", 2, 400]]);
    expect(cell("POTCOUNT", down(200), down(null), 1000)).toBe(0);
    expect(call("POTPLAN", down("A"), down(200), down(0), 1000)).toEqual([["", "", "", ""]]);
  });
  it("keeps the names what they are: numbers, dates and texts", () => {
    expect(call("POTPLAN", down(12, "12", null), down(200, 300, 100), down(1, 1, 1), 1000)).toEqual([
      [1, 12, 1, 200],
      [1, "12", 1, 300],
      [1, "row 3 of the range", 1, 100],
    ]);
    expect(messageOf(call("POTPLAN", down(12), down(5000), down(1), 1000)[0]?.[0], "#N/A")).toContain("12: one candle");
  });
  it("says what is wrong with a row, in that row", () => {
    const rows = call("POTPLAN", down("A", "B", "C"), down(200, null, 300), down(2, 1, 1.5), 1000);
    const messages = rows.slice(0, 2).map((row) => messageOf(row[0]));
    expect(messages[0]).toContain("fills: the cell is blank");
    expect(messages[1]).toContain("1.5 of C");
    expect(rows.slice(2)).toEqual([[1, "A", 2, 400]]);
  });
});

describe("MAKEABLE", () => {
  it("goes by the scarcest thing and leaves out what is not needed", () => {
    expect(cell("MAKEABLE", down(5000, 220, 40), down(200, 12, 1))).toBe(18);
    expect(cell("MAKEABLE", down(5000, 0), down(200, 0))).toBe(25);
    expect(cell("MAKEABLE", down(5000, null), down(200, null))).toBe(25);
    expect(cell("MAKEABLE", down(5000, null), down(200, 0))).toBe(25);
    expect(cell("MAKEABLE", 3 - 1e-12, 1)).toBe(3); // 12 digits count
    expect(cell("MAKEABLE", 3 - 1e-10, 1)).toBe(2);
    expect(cell("MAKEABLE", down(0.3), down(0.1))).toBe(3); // 0.3 / 0.1 is 2.9999999999999996 in binary
  });
  it("does not take a blank shelf for an empty one", () => {
    expect(messageOf(cell("MAKEABLE", down(5000, null), down(200, 1)))).toBe(
      "row 2 of the range: onHand: the cell is blank; fill it in",
    );
    expect(messageOf(cell("MAKEABLE", down(5000), down(0)), "#N/A")).toContain("nothing is needed");
  });
});
