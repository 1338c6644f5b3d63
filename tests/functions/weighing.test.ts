import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { call, cell, down, messageOf } from "./built";

describe("WEIGHOUT", () => {
  it("gives what is left to the largest remainders", () => {
    // Worked by hand: 3.4 + 3.3 + 3.3 = 10; rounding each alone would lose one.
    expect(call("WEIGHOUT", down(3.4, 3.3, 3.3), 1)).toEqual([[4], [3], [3]]);
    expect(call("WEIGHOUT", down(0.5, 0.5), 1)).toEqual([[1], [0]]);
  });
  it("rounds decimals as they are written", () => {
    expect(call("WEIGHOUT", down(1.15), 0.1)).toEqual([[1.2]]); // 1.15 / 0.1 is 11.499999999999998 in binary
    expect(call("WEIGHOUT", down(0.3), 0.1)).toEqual([[0.3]]);
  });
  it("sums to the total rounded, each within a division", () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 100_000 }), { minLength: 1, maxLength: 30 }),
        fc.constantFrom(1, 2, 5, 10, 25),
        (hundredths, step) => {
          // Hundredths of a gram, in a division of `step` tenths: whole numbers decide what is right.
          const weights = hundredths.map((value) => value / 100);
          const division = step / 10;
          const out = call("WEIGHOUT", down(...weights), division).flat() as number[];
          const total = Math.floor((2 * hundredths.reduce((a, b) => a + b) + step * 10) / (step * 20));
          const counts = out.map((value) => value / division);
          expect(counts.reduce((a, b) => a + Math.round(b), 0)).toBe(total);
          out.forEach((value, i) => {
            expect(Math.abs((counts[i] as number) - Math.round(counts[i] as number))).toBeLessThan(1e-9);
            expect(Math.abs(value - (weights[i] as number))).toBeLessThanOrEqual(division * (1 + 1e-9));
          });
        },
      ),
      { numRuns: 500 },
    );
  });
  it("keeps blanks blank, a bad cell's error its own, and the shape", () => {
    const rows = call("WEIGHOUT", [[1.4, null, 2.6, "x"]], 1);
    expect(rows[0]?.slice(0, 3)).toEqual([1, "", 3]);
    expect(messageOf(rows[0]?.[3])).toContain('weights: "x" is text');
    const below = call("WEIGHOUT", down(3.4, -1, 4.6, null), 1);
    expect([below[0], below[2], below[3]]).toEqual([[3], [5], [""]]);
    expect(messageOf(below[1]?.[0])).toBe("weights: -1 is below 0; write 0 or more");
  });
  it("wants a division above 0, and says so beside every weight", () => {
    const rows = call("WEIGHOUT", down(1, 2), 0);
    for (const [value] of rows) expect(messageOf(value)).toContain("division: 0 is not above 0");
  });
});

describe("WEIGHERROR", () => {
  it("is 2.5 % at twenty divisions", () => {
    // NIST Handbook 44 (from memory): at the minimum load of 20 divisions half a division is 2.5 %.
    expect(cell("WEIGHERROR", 20, 1)).toBe(0.025);
    expect(call("WEIGHERROR", down(10, null, 100), 1)).toEqual([[0.05], [""], [0.005]]);
  });
  it("wants a weight above 0", () => {
    expect(messageOf(cell("WEIGHERROR", 0, 1))).toBe("weight: 0 is not above 0; write a number above 0");
    expect(messageOf(cell("WEIGHERROR", 1, 0))).toBe("division: 0 is not above 0; write a number above 0");
  });
});
