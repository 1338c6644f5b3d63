// @vitest-environment happy-dom
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { recordIn } from "../../src/pane/actions/onRecord";
import { planLog } from "../../src/pane/actions/planLog";
import { besideOf, planReceipt } from "../../src/pane/receiving/planReceipt";
import { firstKept } from "../../src/pane/state/kept";
import type { PouredRun } from "../../src/runsheet/record/poured";
import { cases } from "../cases";
import { pouredRun } from "../runsheet/record/poured";
import { rowsOf, TablesAlone } from "./tablesAlone";

const KEPT = firstKept();
const COMPONENTS = rowsOf("Components", [
  ["Vessel", "Item", "Each"],
  ["Tin", "Wick", 2],
]);
const LOTS = ["", "A", "B", "a, B"] as const;
const pot = fc.record({
  wax: fc.integer({ min: 1, max: 9000 }).map((tenths) => tenths / 10),
  lot: fc.constantFrom(...LOTS),
  count: fc.integer({ min: 1, max: 12 }),
  spoilt: fc.integer({ min: 0, max: 3 }),
  isPoured: fc.boolean(),
});
const step = fc.oneof(
  fc.record({
    kind: fc.constant("receipt" as const),
    lot: fc.constantFrom("A", "B", "C"),
    quantity: fc.integer({ min: 1, max: 5000 }),
    unit: fc.constantFrom("g" as const, "oz" as const, "kg" as const),
  }),
  // Twice of one run is a correction, or a pot that was poured later.
  fc.record({ kind: fc.constant("pour" as const), run: fc.integer({ min: 1, max: 3 }), pots: fc.tuple(pot, pot) }),
);
type Pots = typeof pot extends fc.Arbitrary<infer P> ? readonly P[] : never;

const sheetOf = (run: number, pots: Pots): PouredRun =>
  pouredRun(
    pots.map(({ wax, lot, count, spoilt, isPoured }) => ({
      parts: [{ planned: wax, actual: isPoured ? wax : undefined, lot }],
      lines: [{ count, good: isPoured ? Math.max(0, count - spoilt) : undefined }],
    })),
    { lot: `2026-330-0${run}` },
  );

const GRAMS = { g: 1, kg: 1000, oz: 28.349523125 };

describe("mass and count", () => {
  it("balance after any receipts, pours, late pots and corrections: what came in is what is left and what went out", () => {
    const log = (book: TablesAlone, poured: PouredRun) => {
      try {
        const record = recordIn(book.read, KEPT, "g");
        book.add(planLog(poured, record, { sheet: "Run", copies: [], beginsMoves: true }).additions);
      } catch (error) {
        // Nothing on the sheet is other than in the log.
        if (!/is in the runs log already/.test(String(error))) throw error;
      }
    };
    fc.assert(
      fc.property(fc.array(step, { minLength: 1, maxLength: 12 }), (steps) => {
        const book = new TablesAlone({ components: COMPONENTS });
        let received = 0;
        /** The last that was written of each pot that is logged, by the test's own book-keeping. */
        const standing = new Map<string, Pots[number]>();
        for (const one of steps) {
          if (one.kind === "receipt") {
            const typed = {
              ...one,
              quantity: String(one.quantity),
              date: "2026-11-01",
              item: "Wax",
              paid: "",
              bestBefore: "",
            };
            const { ready } = planReceipt({ ...typed, note: "" }, besideOf(book.read, KEPT));
            book.add([(ready as NonNullable<typeof ready>).addition]);
            received += one.quantity * GRAMS[one.unit];
            continue;
          }
          // A pot that is logged is never unpoured again.
          const pots = one.pots.map((pot, i) => ({
            ...pot,
            isPoured: pot.isPoured || standing.has(`${one.run} ${i}`),
          }));
          if (!pots.some(({ isPoured }) => isPoured)) continue;
          // The first press logs what is open, the second what of the rest was written over.
          log(book, sheetOf(one.run, pots));
          log(book, sheetOf(one.run, pots));
          for (const [i, pot] of pots.entries()) if (pot.isPoured) standing.set(`${one.run} ${i}`, pot);
        }
        const poured = [...standing.values()];
        const total = (of: (pot: Pots[number]) => number) => poured.reduce((sum, pot) => sum + of(pot), 0);
        const change = (item: string) => book.sum("moves", "Change (g)", (of) => of("Item") === item);
        expect(change("Wax")).toBeCloseTo(received - total(({ wax }) => wax), 4);
        expect(change("Tin") + total(({ count }) => count)).toBe(0);
        expect(change("Wick") + 2 * total(({ count }) => count)).toBe(0);
        const logged = (column: string) => book.sum("log", column, () => true);
        expect(logged("Candles")).toBe(total(({ count }) => count));
        expect(logged("Good")).toBe(total(({ count, spoilt }) => Math.max(0, count - spoilt)));
        expect(logged("Wax actual")).toBeCloseTo(
          total(({ wax }) => wax),
          6,
        );
      }),
      { numRuns: cases(60, 3000) },
    );
  });
});
