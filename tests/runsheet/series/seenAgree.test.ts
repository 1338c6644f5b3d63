import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { CellValue } from "../../../src/sheet/sheet";
import { cases } from "../../cases";
import { burnt, candle, errorsIn, expectSame, LOOKS, worked } from "./seenBoth";

/** What a reading's cells may hold instead, at limits and beside them: lengths by their headings, heat in F. */
const CHANGED: Readonly<Record<string, readonly CellValue[]>> = {
  Cycle: [null, "two", 3, 1, 1.5, 0],
  "Burn time (h)": [null, 0, 0.5, 1.25, 2, 4, 4.5, 6, 12, 0.05, "late", -1, 0.001],
  "Weight (kg)": [null, 0.4, 0.37, 0.3605, "heavy", 0, -1],
  "Flame (mm)": [null, 0, 3, 4.9, 8, 9.9, 70, 75, 75.1, 82, -1, "high"],
  "Pool (in)": [null, 10 / 25.4, 30 / 25.4, 70 / 25.4, 75 / 25.4, -1, "wide"],
  "Wax left (cm)": [null, 0.45, 0.35, 4.5, 1, 1.001, 1.05, 1.12, 1.2, 0.9, 0.85, 3, 0, -1, "low"],
  Soot: [null, "none", "No soot.", "a dark ring", 0.5, 1, 1.1, "?", "2", -1],
  // 68 F are the 20 C of a room, 77 F 25 C, 86 F 30 C, 140 F the 60 C that are too hot.
  "Glass temperature (F)": [null, 140, 140.1, 150, 86, 85.9, 77, 76.9, 68, 67.9, 59, 0, -40, "hot"],
  Throw: [null, 3, 5, 0, -1, "good"],
  Remarks: [null, "odd smell", "wick leaned"],
};
const aLook = fc.nat(14);
const aChange = fc
  .constantFrom(...Object.keys(CHANGED))
  .chain((heading) =>
    fc.record({ look: aLook, heading: fc.constant(heading), value: fc.constantFrom(...(CHANGED[heading] ?? [])) }),
  );
const aCandle = fc.record({
  wick: fc.constantFrom<CellValue>("Size 6", "size 6 ", "Size 9", 6),
  width: fc.constantFrom<CellValue>(7, 7, 7, ""),
  burnt: fc.record({
    rate: fc.integer({ min: 40, max: 70 }).map((tenths) => tenths / 10),
    cycles: fc.integer({ min: 0, max: 3 }),
    left: fc.constantFrom(1, 1, 0.8, 2),
  }),
  changes: fc.array(aChange, { maxLength: 3 }),
  // One look, a whole cycle, or all of it but the weighing at its start.
  lost: fc.oneof(
    { weight: 3, arbitrary: fc.array(aLook, { maxLength: 1 }) },
    fc.constantFrom<number[]>([0, 1, 2, 3, 4], [1, 2, 3, 4], [5, 6, 7, 8, 9], [6, 7, 8, 9]),
  ),
  /** Looks at which the candle was weighed only. */
  weighed: fc.array(aLook, { maxLength: 1 }),
});
type Candle = typeof aCandle extends fc.Arbitrary<infer C> ? C : never;
const aSeries = fc.record({
  candles: fc.array(aCandle, { minLength: 1, maxLength: 6 }),
  product: fc.constantFrom("", "container", "tea light", "pillar"),
  fill: fc.constantFrom(undefined, 180, 50, 20),
});

const looksOf = (test: string, { burnt: how, changes, lost, weighed }: Candle): CellValue[][] =>
  burnt(test, { ...how, rows: how.cycles })
    .map((row, look) => {
      const own = new Map(changes.flatMap((one) => (one.look === look ? [[one.heading, one.value]] : [])));
      if (weighed.includes(look)) return row.map((value, i) => (i < 3 ? value : i === 3 ? 0.35 : null));
      return row.map((value, i) => (own.has(LOOKS[i] ?? "") ? (own.get(LOOKS[i] ?? "") ?? null) : value));
    })
    .filter((_, look) => !lost.includes(look));

describe("any series", () => {
  it("comes to the same on its sheet as read without it", async () => {
    await fc.assert(
      fc.asyncProperty(aSeries, async ({ candles, product, fill }) => {
        const named = candles.map((one, i) => ["ABCDEF"[i] as string, one] as const);
        const tests = named.map(([name, { wick, width }]) => candle(name, wick, { 2: width, 8: product }));
        const book = { tests, looks: named.flatMap(([name, one]) => looksOf(name, one)) };
        const { values, wicks } = await worked(book, book, fill);
        expect(errorsIn(values)).toEqual([]);
        expectSame(values, wicks);
      }),
      // The same ones each time: what is rounded in two places may differ where by chance a half comes up.
      { seed: 1, numRuns: cases(8, 400) },
    );
  });
});
