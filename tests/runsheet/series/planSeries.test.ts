import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { planSeries, type SeriesOrder, seriesFaults } from "../../../src/runsheet/series/planSeries";

/** Four wicks in bowls, three candles of each; 46352 is 26 November 2026. All invented. */
const ORDER: SeriesOrder = {
  ...{ code: "S1", vessel: "Bowl", wicks: ["Size 4", "Size 6", "Size 8", "Size 10"], candles: 3, cycles: 6, atOnce: 4 },
  ...{ pouredOn: 46352, cureDays: 14 },
};

describe("a planned series", () => {
  it("burns each wick once before any again, and is the same each time", () => {
    fc.assert(
      fc.property(
        fc.record({
          wicks: fc.uniqueArray(fc.integer({ min: 1, max: 40 }), { minLength: 1, maxLength: 8 }),
          candles: fc.integer({ min: 1, max: 6 }),
          code: fc.constantFrom("A", "B", "S12"),
        }),
        ({ wicks, candles, code }) => {
          const order = { ...ORDER, code, candles, wicks: wicks.map((size) => `Size ${size}`) };
          const { candles: burnt } = planSeries(order);
          expect(planSeries(order).candles).toEqual(burnt);
          expect(new Set(burnt.map(({ test }) => test)).size).toBe(wicks.length * candles);
          for (let round = 0; round < candles; round++) {
            const part = burnt.slice(round * wicks.length, (round + 1) * wicks.length).map(({ wick }) => wick);
            expect([...part].sort()).toEqual([...order.wicks].sort());
          }
        },
      ),
    );
  });

  it("has another order in each round and for another series", () => {
    const orders = ["A", "B", "C"].flatMap((code) => {
      const { candles } = planSeries({ ...ORDER, code });
      return [0, 4, 8].map((from) =>
        candles
          .slice(from, from + 4)
          .map(({ wick }) => wick)
          .join(),
      );
    });
    // Of 24 possible orders nine are hardly ever one.
    expect(new Set(orders).size).toBeGreaterThan(3);
  });

  it("burns after the cure, four at once, two cycles a day", () => {
    const { candles, looks, hours, watched, firstDay, lastDay, days } = planSeries(ORDER);
    // By hand: 14 days of cure; six cycles take three days; twelve candles are three lots of four.
    expect(candles.map(({ burnOn }) => burnOn - 46352)).toEqual([14, 14, 14, 14, 17, 17, 17, 17, 20, 20, 20, 20]);
    expect([candles[0]?.test, candles[11]?.test]).toEqual(["S1-01", "S1-12"]);
    // Twelve candles of six cycles of four hours; a look at the beginning of each and at each of its hours.
    expect([hours, days, looks.length]).toEqual([288, 9, 360]);
    // Somebody stays with three lots of six cycles of four hours; nine days, both ends counted.
    expect([watched, firstDay - 46352, lastDay - 46352]).toEqual([72, 14, 22]);
    expect(looks.slice(0, 6).map(({ cycle, minutes }) => [cycle, minutes])).toEqual([
      ...[0, 60, 120, 180, 240].map((minutes) => [1, minutes]),
      [2, 0],
    ]);
  });

  it.each([
    [{ wicks: [" ", ""] }, "wicks: nothing is given"],
    [{ wicks: ["Size 4", "size  4"] }, "wicks: size  4 stands twice"],
    [{ vessel: " " }, "vessel: nothing is given"],
    [{ code: "" }, "code: nothing is given"],
    [{ candles: 0 }, "candles: 0 is no whole number from 1 to 50"],
    [{ candles: 2.5 }, "candles: 2.5 is no whole number"],
    [{ cycles: 61 }, "cycles: 61 is no whole number from 1 to 60"],
    [{ atOnce: 0 }, "atOnce: 0 is no whole number"],
    [{ cureDays: -1 }, "cureDays: -1 is no whole number"],
  ])("refuses %j", (change, words) => {
    expect(() => planSeries({ ...ORDER, ...change })).toThrow(words);
  });

  it("says all that is wrong at once, and refuses more readings than anybody writes down", () => {
    const wrong = seriesFaults({ ...ORDER, vessel: "", candles: 0, cureDays: 0.5 });
    expect(wrong.map(({ argument }) => argument)).toEqual(["vessel", "candles", "cureDays"]);
    // 4 wicks of 50 candles of 60 cycles with 5 looks each.
    expect(() => planSeries({ ...ORDER, candles: 50, cycles: 60 })).toThrow("that makes 60000 readings");
  });
});
