import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { CellError, down, messageOf, metadata, registered, registeredBeside, type Value } from "./built";

/** The functions in an Excel whose newest requirement set of functions is this one. */
const inExcel = (newest: number) =>
  registeredBeside({
    Office: { context: { requirements: { isSetSupported: (_: string, asked: string) => Number(asked) <= newest } } },
  });
const old = inExcel(1.4);
const work = (functions: typeof old, id: string, ...args: unknown[]): Value[][] => functions.get(id)?.(...args) ?? [];

describe("where a blank cell may come as 0", () => {
  it("a 0 that would count is an error that says why", () => {
    const [[load] = []] = work(old, "WAXPART", [[106]], [[0]], null, null);
    expect(messageOf(load)).toBe(
      "load: 0 or blank, which this Excel cannot tell apart; write another number, or update Excel",
    );
    // A hidden limit of 0 would forbid the scent, a blank one would not be checked.
    expect(messageOf(work(old, "LOADLIMIT", [[0]], [[0.2]], null)[0]?.[0])).toContain("waxMaximum: 0 or blank");
    expect(messageOf(work(old, "BURNRATE", down(0, 1, 2), down(250, 243, 236))[0]?.[0])).toContain("hours: 0 or blank");
  });

  it("a blank row stays blank, and a blank that has a default takes it", () => {
    expect(work(old, "FILLWEIGHT", down(100, 0), [[0]])).toEqual([[86], [""]]);
    expect(work(old, "WAXFACTOR", down(200, 300, 250), down(172, 258, 0))).toEqual([[0.86]]);
    expect(work(old, "ASKPRICE", [[5]], [[0.5]], [[0]], [[0]])).toEqual([[10]]);
    expect(work(old, "POTPLAN", [[0]], [[200]], [[2]], 1000, 0)).toEqual([[1, "row 1 of the range", 2, 400]]);
  });

  it("a newer Excel and a page without Office have their zeros", () => {
    for (const functions of [inExcel(1.5), registered]) {
      expect(work(functions, "WAXPART", [[106]], [[0]], null, null)).toEqual([[106]]);
    }
  });

  it("an Office that has not said what it is counts as an old one", () => {
    expect(work(registeredBeside({ Office: {} }), "FILLWEIGHT", [[0]], null)).toEqual([[""]]);
  });
});

describe("a blank cell that comes as 0", () => {
  const cell = fc.constantFrom<Value>(null, null, "g", "mm", "of wax", "part", 0.05, 0.5, 1, 2, 3, 250, 1000);
  const column = fc.array(cell, { minLength: 3, maxLength: 3 }).map((cells) => down(...cells));
  const argument = fc.oneof(
    column,
    cell.map((one) => [[one]]),
  );
  const asZero = (rows: Value[][]) => rows.map((row) => row.map((one) => one ?? 0));

  it.each(metadata.functions.map(({ id, parameters }) => [id, parameters.length] as const))(
    "is no other number and no other text of %s",
    (id, count) => {
      fc.assert(
        fc.property(fc.array(argument, { minLength: count, maxLength: count }), (args) => {
          const right = work(registered, id, ...args);
          const there = work(old, id, ...args.map(asZero));
          for (const [r, row] of there.entries()) {
            for (const [c, value] of row.entries()) {
              if (value !== "" && !(value instanceof CellError)) expect(value).toEqual(right[r]?.[c]);
            }
          }
        }),
        { numRuns: 200 },
      );
    },
  );
});
