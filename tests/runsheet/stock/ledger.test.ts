import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { ledgerOf } from "../../../src/runsheet/stock/ledger";
import { leftOf, lotsOf, oldestLots, overdrawn } from "../../../src/runsheet/stock/lots";
import type { CellValue } from "../../../src/sheet/sheet";
import { cases } from "../../cases";
import { DAY, ledgerFrom, movesOf } from "./moved";

/** What may happen in a studio, in whole milligrams: every sum of them is exact. */
interface Event {
  readonly day: number;
  readonly item: string;
  readonly lot: string;
  readonly milligrams: number;
}
const rowOf = ({ day, item, lot, milligrams }: Event): CellValue[] => [DAY + day, item, lot, milligrams / 1000];

const place = {
  day: fc.integer({ min: 0, max: 400 }),
  item: fc.constantFrom("Soy wax", "soy  WAX", "Fig oil", "Amber jar"),
  lot: fc.constantFrom("A", "a ", "B-2", "", "17"),
};
const receipt = fc.record({ ...place, milligrams: fc.integer({ min: 1, max: 50_000_000 }) });
const pour = fc.record({ ...place, milligrams: fc.integer({ min: -9_000_000, max: -1 }) });
/** Receipts and pours in any order, and corrections: a row that takes back one that is there, in part or whole. */
const events = fc
  .tuple(
    fc.array(fc.oneof(receipt, pour), { maxLength: 40 }),
    fc.array(fc.tuple(fc.nat(), fc.integer({ min: 0, max: 100 })), { maxLength: 10 }),
  )
  .map(([all, corrections]) => [
    ...all,
    ...corrections.flatMap(([which, percent]): Event[] => {
      const wrong = all[which % Math.max(1, all.length)];
      return wrong ? [{ ...wrong, milligrams: -Math.round((wrong.milligrams * percent) / 100) }] : [];
    }),
  ]);

const RUNS = { numRuns: cases(300, 20_000) };
const key = (name: string) => name.trim().replace(/\s+/g, " ").toLowerCase();

describe("the balance of the ledger", () => {
  it("is what came in less what went out, for each item and lot, to the last digit", () => {
    fc.assert(
      fc.property(events, (all) => {
        const ledger = ledgerFrom(all.map(rowOf));
        // The books, kept once more in whole numbers.
        const books = new Map<string, { in: bigint; out: bigint }>();
        for (const { item, lot, milligrams } of all) {
          const name = `${key(item)}|${key(lot)}`;
          const of = books.get(name) ?? { in: 0n, out: 0n };
          books.set(
            name,
            milligrams > 0 ? { ...of, in: of.in + BigInt(milligrams) } : { ...of, out: of.out - BigInt(milligrams) },
          );
        }
        const kept = [...ledger.items].flatMap(([item, { lots }]) =>
          lots.map((lot): [string, unknown] => {
            expect(lot.received - lot.used).toBe(lot.left);
            return [`${item}|${key(lot.lot)}`, { in: BigInt(lot.received) / 1000n, out: BigInt(lot.used) / 1000n }];
          }),
        );
        expect(new Map(kept)).toEqual(books);
      }),
      RUNS,
    );
  });

  it("does not hang on the order of the rows", () => {
    const each = (all: Event[]) =>
      [...ledgerFrom(all.map(rowOf)).items].map(([item, { lots }]) => [
        item,
        lots.map(({ lot, received, used, since }) => [key(lot), received, used, since]).sort(),
      ]);
    fc.assert(
      fc.property(
        events.chain((all) => fc.tuple(fc.constant(all), fc.shuffledSubarray(all, { minLength: all.length }))),
        ([all, shuffled]) => {
          expect(each(shuffled).sort()).toEqual(each(all).sort());
        },
      ),
      RUNS,
    );
  });

  it.each(["g", "kg", "oz", "lb"] as const)(
    "goes down by what oldest lots give, in a table in %s, and to nothing when all is taken",
    (tableUnit) => {
      fc.assert(
        fc.property(events, fc.integer({ min: 1, max: 60_000_000 }), (all, milligrams) => {
          const rows = all.map(rowOf);
          const ledger = ledgerFrom(rows, "g", tableUnit);
          for (const item of ["Soy wax", "Fig oil"]) {
            const before = lotsOf(ledger, item, "weight");
            const { taken, lacking } = oldestLots(ledger, item, milligrams / 1000, "weight", DAY);
            const after = ledgerFrom(
              [...rows, ...taken.map(({ lot, written }): CellValue[] => [DAY + 500, item, lot, -written])],
              "g",
              tableUnit,
            );
            const sum = (parts: readonly { written: number }[]) =>
              parts.reduce((n, { written }) => n + Math.round(written * 1e6), 0);
            const whole = (of: typeof ledger) =>
              of.items.get(key(item))?.lots.reduce((n, { left }) => n + left, 0) ?? 0;
            expect(whole(after)).toBe(whole(ledger) - sum(taken));
            // Nothing is asked of a younger lot while an older one has some.
            expect(taken.map(({ lot }) => lot)).toEqual(before.slice(0, taken.length).map(({ lot }) => lot));
            expect(lotsOf(after, item, "weight").map(({ lot }) => lot)).toEqual(
              before.map(({ lot }) => lot).slice(Math.max(0, before.length - lotsOf(after, item, "weight").length)),
            );
            if (lacking.written > 0) expect(lotsOf(after, item, "weight")).toEqual([]);
          }
        }),
        { numRuns: cases(100, 5000) },
      );
    },
  );
});

describe("the lots of an item", () => {
  const rows: CellValue[][] = [
    [DAY + 9, "Soy wax", "B", 1000, 4, DAY + 300],
    [DAY, "Soy wax", "A", 500, 1, DAY + 90],
    [DAY + 10, "soy wax", "a", -120.5, null, null, "2026-340-01"],
    [DAY + 11, "Soy wax", "A", 0, null, DAY + 120],
    [DAY + 3, "Soy wax", "A", 100, 0.5],
    [DAY, "Amber jar", "", 48, 96],
  ];

  it("stand by age, with what is left, the best before written last and what one unit cost", () => {
    expect(lotsOf(ledgerFrom(rows), "SOY wax", "weight")).toEqual([
      // 1 and 0.50 were paid for 500 and 100.
      { lot: "A", quantity: 479.5, since: DAY, bestBefore: DAY + 120, unitPrice: 1.5 / 600 },
      { lot: "B", quantity: 1000, since: DAY + 9, bestBefore: DAY + 300, unitPrice: 0.004 },
    ]);
    expect(lotsOf(ledgerFrom(rows), "Amber jar", "count")).toMatchObject([{ lot: "", quantity: 48, unitPrice: 2 }]);
    expect(leftOf(ledgerFrom(rows), "Soy wax", "weight")).toBe(1479.5);
    expect(leftOf(ledgerFrom(rows), "Moss oil", "weight")).toBeUndefined();
  });

  it("are weighed in the unit that is asked for, and counted as they are", () => {
    const ledger = ledgerFrom(
      [
        [DAY, "Soy wax", "A", 10, 45],
        [DAY, "Lid", "L", 12, 6],
      ],
      "g",
      "lb",
    );
    // A pound is 453.59237 g.
    expect(lotsOf(ledger, "Soy wax", "weight")).toMatchObject([{ quantity: 4535.9237, unitPrice: 4.5 / 453.59237 }]);
    expect(lotsOf(ledger, "Lid", "count")).toMatchObject([{ quantity: 12, unitPrice: 0.5 }]);
  });

  it("give what went out without a lot, or beyond a lot, from the oldest of the others", () => {
    const more: CellValue[][] = [...rows, [DAY + 20, "Soy wax", null, -400], [DAY + 20, "Soy wax", "C", -100]];
    const ledger = ledgerFrom(more);
    expect(lotsOf(ledger, "Soy wax", "weight").map(({ lot, quantity }) => [lot, quantity])).toEqual([["B", 979.5]]);
    expect(leftOf(ledger, "Soy wax", "weight")).toBe(979.5);
    expect(overdrawn(ledger, "Soy wax").map(({ lot }) => lot)).toEqual(["C"]);
  });

  it("are taken oldest first, those past their best before in their turn, and what is lacking is said", () => {
    const ledger = ledgerFrom(rows);
    expect(oldestLots(ledger, "Soy wax", 600, "weight", DAY + 121)).toEqual({
      taken: [
        { lot: "A", quantity: 479.5, written: 479.5, past: DAY + 120 },
        { lot: "B", quantity: 120.5, written: 120.5, past: undefined },
      ],
      lacking: { quantity: 0, written: 0 },
    });
    expect(oldestLots(ledger, "Soy wax", 10, "weight", DAY + 120).taken).toMatchObject([{ past: undefined }]);
    expect(oldestLots(ledger, "Soy wax", 1500, "weight", DAY).lacking).toEqual({ quantity: 20.5, written: 20.5 });
    expect(oldestLots(ledger, "Moss oil", 5, "weight", DAY)).toEqual({
      taken: [],
      lacking: { quantity: 5, written: 5 },
    });
  });

  it("come to nothing without binary dust: 0.3 less three times 0.1", () => {
    const out: CellValue[] = [DAY, "Dye", "D", -0.1];
    const ledger = ledgerFrom([[DAY, "Dye", "D", 0.3], out, out, out]);
    expect(leftOf(ledger, "Dye", "weight")).toBe(0);
    expect(lotsOf(ledger, "Dye", "weight")).toEqual([]);
  });

  it("that came in on one day stand as their rows do", () => {
    const ledger = ledgerFrom(["C", "A", "B"].map((lot): CellValue[] => [DAY, "Soy wax", lot, 5]));
    expect(lotsOf(ledger, "Soy wax", "weight").map(({ lot }) => lot)).toEqual(["C", "A", "B"]);
  });

  it("with a day that cannot be read come last", () => {
    const ledger = ledgerOf(
      movesOf([
        ["soon", "Soy wax", "X", 5],
        [DAY, "Soy wax", "Y", 5],
      ]),
    );
    expect(lotsOf(ledger, "Soy wax", "weight").map(({ lot }) => lot)).toEqual(["Y", "X"]);
  });
});
