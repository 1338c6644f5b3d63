import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { call, cell, down, messageOf, type Value } from "./built";

const rate = fc.double({ min: 0, max: 0.999, noNaN: true });
const weight = fc.double({ min: 1e-3, max: 1e6, noNaN: true });
const basis = fc.constantFrom("of wax", "of total");

describe("SCENTSPLIT, WAXPART, SCENTPART", () => {
  it("splits 318 at 6 % of wax into 300 and 18", () => {
    // Worked by hand: 300 x 1.06 = 318, in any one weight unit.
    expect(call("SCENTSPLIT", 318, 0.06)).toEqual([[300, 18]]);
  });
  it("knows of wax from of total", () => {
    expect(call("SCENTSPLIT", 106, 0.06)).toEqual([[100, 6]]);
    expect(call("SCENTSPLIT", 100, 0.06, "of total")).toEqual([[94, 6]]);
    expect(call("SCENTSPLIT", 100, 0.06, "OF TOTAL ")).toEqual([[94, 6]]);
  });
  it("wax + scent = fill, to the last bit, and each at its load", () => {
    fc.assert(
      fc.property(weight, rate, basis, (fill, load, on) => {
        const [wax, scent] = call("SCENTSPLIT", fill, load, on)[0] as [number, number];
        expect(wax + scent).toBe(fill);
        const base = on === "of wax" ? wax : fill;
        expect(Math.abs(scent - load * base)).toBeLessThanOrEqual(fill * 4e-16);
        expect(cell("WAXPART", fill, load, on)).toBe(wax);
        expect(cell("SCENTPART", fill, load, on)).toBe(scent);
      }),
      { numRuns: 2000 },
    );
  });
  it("weighs each fill out by itself: its own total, the scent to the nearest division, the wax the rest", () => {
    // By hand: 6 % of wax in 215.4 is 12.192, in 216.5 is 12.255; half a division goes up.
    expect(call("SCENTSPLIT", down(215.4, 216.5, null), 0.06, null, down(1, 1, 1))).toEqual([
      [203, 12],
      [205, 12],
      ["", ""],
    ]);
    expect(call("SCENTSPLIT", 215.43, 0.06, "of total", 0.1)).toEqual([[202.5, 12.9]]);
    expect(call("SCENTSPLIT", 10.5, 0.05, "of total", down(1, 0.5))).toEqual([
      [10, 1],
      [10, 0.5],
    ]);
    expect([cell("WAXPART", 215.4, 0.06, null, 1), cell("SCENTPART", 215.4, 0.06, null, 1)]).toEqual([203, 12]);
  });
  it("weighs out as decimals say, not as binary fractions do", () => {
    // 1.15 / 0.1 is 11.499999999999998 in binary; by hand 11.5 goes up to 12.
    expect(call("SCENTSPLIT", 1.15, 0, null, 0.1)).toEqual([[1.2, 0]]);
    const tenths = fc.integer({ min: 200, max: 9000 });
    fc.assert(
      fc.property(tenths, fc.constantFrom(0, 0.04, 0.06, 0.1), basis, (fill, load, on) => {
        const [wax, scent] = call("SCENTSPLIT", fill / 10, load, on, 0.5)[0] as [number, number];
        expect([wax * 2, scent * 2].every(Number.isInteger)).toBe(true);
        expect(Math.abs(wax + scent - fill / 10)).toBeLessThanOrEqual(0.25 + 1e-9);
        expect(Math.abs(scent - (cell("SCENTPART", fill / 10, load, on) as number))).toBeLessThanOrEqual(0.25 + 1e-9);
      }),
    );
  });
  it("says where a scale cannot weigh a part, and refuses a division of nothing", () => {
    expect(messageOf(cell("SCENTPART", 8, 0.06, null, 1))).toBe(
      "division: 0.4528 is under half a division of 1; weigh it on a finer scale",
    );
    expect(messageOf(cell("WAXPART", 0.4, 0, null, 1))).toContain("division: 0.4 is under half");
    expect(call("SCENTSPLIT", 0, 0.06, null, 1)).toEqual([[0, 0]]);
    expect(messageOf(cell("WAXPART", 100, 0.06, null, 0))).toContain("division: 0 is not above 0");
    expect(messageOf(cell("WAXPART", 100, 0.06, null, 1e-12))).toMatch(/^division: .*too fine/);
  });
  it("never guesses a basis", () => {
    expect(messageOf(cell("WAXPART", 100, 0.06, "wax"))).toBe(
      'basis: "wax" is not known here; write of wax or of total',
    );
  });
  it.each([
    [6, "load: 6 means 600 %; write 6% or 0.06"],
    [1, "load: 1 means 100 %; write 1% or 0.01 if 1 % was meant, else a share below 100 %"],
    [1.5, "load: 1.5 means 150 %; write 1.5% or 0.015 if 1.5 % was meant, else a share below 100 %"],
    [2, "load: 2 means 200 %; write 2% or 0.02"],
    [7.5, "load: 7.5 means 750 %; write 7.5% or 0.075"],
    [600, "load: 600 means 60000 %; write a share below 100 %"],
    [-0.1, "load: -0.1 is below 0; write 0 or more"],
  ])("refuses a load of %d", (load, message) => {
    expect(messageOf(cell("WAXPART", 100, load))).toBe(message);
  });
});

describe("LOADAS and LOADFROM", () => {
  it("25 % of wax is 20 % of total", () => {
    expect(cell("LOADAS", 0.25, "of wax", "of total")).toBe(0.2);
    expect(cell("LOADAS", 0.2, "of total", "of wax")).toBe(0.25);
    expect(cell("LOADAS", 0.5, "of total", "of wax")).toBe(1);
  });
  it("goes there and back", () => {
    fc.assert(
      fc.property(rate, (load) => {
        const total = cell("LOADAS", load, "of wax", "of total") as number;
        expect(cell("LOADAS", total, "of total", "of wax")).toBeCloseTo(load, 12);
      }),
    );
  });
  it("finds the load that was split", () => {
    fc.assert(
      fc.property(weight, fc.double({ min: 0, max: 0.49, noNaN: true }), basis, (fill, load, on) => {
        const [wax, scent] = call("SCENTSPLIT", fill, load, on)[0] as [number, number];
        expect(cell("LOADFROM", wax, scent, on)).toBeCloseTo(load, 12);
      }),
    );
  });
  it("asks whether wax and scent were swapped", () => {
    for (const on of ["of wax", "of total"]) {
      expect(messageOf(cell("LOADFROM", 18, 300, on))).toBe(
        "scent: 300 of scent in 18 of wax is a load of 100 % of wax or more; were the two swapped? Give the wax first",
      );
    }
    expect(messageOf(cell("LOADFROM", 100, 100))).toContain("swapped");
  });
  it("has no load without wax", () => {
    expect(messageOf(cell("LOADFROM", 0, 5))).toContain("wax");
  });
});

describe("LOADCHECK", () => {
  it("compares each limit in its own basis", () => {
    // 12 % of wax is 10.714 % of total: within 11 % of total, above 10 % of wax.
    expect(cell("LOADCHECK", 0.12, 0.12, 0.11)).toBe("");
    expect(cell("LOADCHECK", 0.11, 0.1)).toBe("over the wax maximum by 1 point: 11 % of wax, at most 10 %");
    expect(cell("LOADCHECK", 0.12, 0.1, 0.11)).toBe("over the wax maximum by 2 points: 12 % of wax, at most 10 %");
    expect(cell("LOADCHECK", 0.12, 0.12, 0.1)).toBe(
      "over the product limit by 0.71 points: 10.71 % of total, at most 10 %",
    );
    expect(cell("LOADCHECK", 0.12, 0.1, 0.1, "of total")).toMatch(
      /^over the wax maximum by .*; over the product limit by /,
    );
  });
  it("shows as many digits as tell the two apart", () => {
    expect(cell("LOADCHECK", 0.1000001, 0.1, null)).toBe(
      "over the wax maximum by 0.00001 points: 10.00001 % of wax, at most 10 %",
    );
  });
  it("takes a limit of 100 % as no restriction, and nothing above it", () => {
    expect(cell("LOADCHECK", 0.12, 1, 1)).toBe("");
    expect(cell("LOADCHECK", 0.12, null, 1 + 2 ** -52)).toBe("");
    expect(cell("LOADCHECK", 0.12, 0.1, 1)).toContain("over the wax maximum by 2 points");
    expect(messageOf(cell("LOADCHECK", 0.12, null, 10))).toBe("productLimit: 10 means 1000 %; write 10% or 0.1");
    expect(messageOf(cell("LOADCHECK", 0.12, 1.2, null))).toBe(
      "waxMaximum: 1.2 means 120 %; write 1.2% or 0.012 if 1.2 % was meant, else a share up to 100 %",
    );
    expect(messageOf(cell("LOADCHECK", 0.12, null, 100))).toBe("productLimit: 100 means 10000 %; write 100% or 1");
    expect(messageOf(cell("LOADCHECK", 1, 1, 1))).toContain("load: 1 means 100 %");
  });
  it("does not check blank limits, and a limit met exactly is within", () => {
    expect(cell("LOADCHECK", 0.3, 0.3, null)).toBe("");
    expect(cell("LOADCHECK", 0.3, null, 0.3)).toBe("");
    expect(messageOf(cell("LOADCHECK", 6, null, null))).toContain("6 means 600 %");
    expect(cell("LOADCHECK", 0.1, 0.1, null)).toBe("");
    expect(cell("LOADCHECK", 0.25, null, 0.2)).toBe("");
    expect(call("LOADCHECK", down(null, 0.2), 0.1, 0.1)[0]).toEqual([""]);
  });
});

describe("LOADCHECK without a limit", () => {
  // An empty text would read as: checked, and within.
  it("says that none was given", () => {
    expect(call("LOADCHECK", down(0.3, 0.06, null), null, null)).toEqual(down("no limit given", "no limit given", ""));
  });
  it("says so of a load of 0 too: nothing was checked", () => {
    expect(cell("LOADCHECK", 0, null, null)).toBe("no limit given");
  });
});

describe("LOADLIMIT", () => {
  it("is the lower of the two, each in its own basis", () => {
    // By hand: 10 % of wax is 1/11 of the total; 8 % of total is 8/92 of the wax.
    expect(cell("LOADLIMIT", 0.1, 0.08)).toBeCloseTo(8 / 92, 14);
    expect(cell("LOADLIMIT", 0.1, 0.08, "of total")).toBe(0.08);
    expect(cell("LOADLIMIT", 0.08, 0.08)).toBe(0.08);
    expect(cell("LOADLIMIT", 0.1, 0.1, "of total")).toBeCloseTo(1 / 11, 14);
    expect(cell("LOADLIMIT", 1, 0.6, "of total")).toBe(0.5);
  });
  it("is not limited by a blank, and there is none without limits", () => {
    const rows = call("LOADLIMIT", down(0.1, null, null, 0.1), down(null, 0.2, null, 1));
    expect(rows.map(([value]) => value)).toEqual([0.1, 0.25, expect.anything(), 0.1]);
    expect(messageOf(rows[2]?.[0], "#N/A")).toContain("no limit given");
    expect(messageOf(cell("LOADLIMIT", null, 1), "#N/A")).toContain("100 % of total limits nothing");
    expect(messageOf(cell("LOADLIMIT", 10, null))).toContain("waxMaximum: 10 means 1000 %");
  });
  it("is within both limits, and a little more is not", () => {
    const share = fc.double({ min: 0.01, max: 0.4, noNaN: true });
    fc.assert(
      fc.property(share, share, basis, (wax, product, on) => {
        const load = cell("LOADLIMIT", wax, product, on) as number;
        expect(cell("LOADCHECK", load, wax, product, on)).toBe("");
        expect(cell("LOADCHECK", load * 1.0001, wax, product, on)).toContain("over the ");
      }),
    );
  });
});

describe("RECIPESPLIT", () => {
  it("adds up by hand: three parts and one part of wax, 6 % of wax, in 212", () => {
    const recipe = call("RECIPESPLIT", 212, down(3, 1, 0.06), down("part", "part", "of wax"));
    expect(recipe).toEqual([[150], [50], [12]]);
  });
  it("mixes the bases: of total is a share of everything", () => {
    const recipe = call("RECIPESPLIT", 1000, down(1, 0.1, 0.01), down("part", "of wax", "of total")).flat() as number[];
    expect(recipe[2]).toBeCloseTo(10, 10);
    expect(recipe[0]).toBeCloseTo(900, 10);
    expect(recipe[1]).toBeCloseTo(90, 10);
  });
  const ingredient = fc.oneof(
    fc.tuple(fc.double({ min: 0, max: 0.2, noNaN: true }), fc.constantFrom("of wax", "of total")),
    fc.tuple(fc.double({ min: 0.01, max: 10, noNaN: true }), fc.constant("part")),
  );
  it("sums to the fill, exactly in divisions when it is weighed out", () => {
    fc.assert(
      fc.property(fc.integer({ min: 100, max: 5000 }), fc.array(ingredient, { maxLength: 3 }), (fill, more) => {
        const rows: [number, string][] = [[1, "part"], ...more];
        const shares = down(...rows.map(([share]) => share));
        const bases = down(...rows.map(([, on]) => on));
        const exact = call("RECIPESPLIT", fill, shares, bases).flat() as number[];
        expect(exact.reduce((a, b) => a + b)).toBeCloseTo(fill, 8);
        const weighed = call("RECIPESPLIT", fill, shares, bases, 1).flat() as number[];
        expect(weighed.reduce((a, b) => a + b)).toBe(fill);
        weighed.forEach((value, i) => {
          expect(Number.isInteger(value)).toBe(true);
          expect(Math.abs(value - (exact[i] as number))).toBeLessThanOrEqual(1 + 1e-9);
        });
      }),
    );
  });
  it("keeps blank rows blank and says which row spoils the rest", () => {
    expect(call("RECIPESPLIT", 106, down(1, null, 0.06), down("part", null, "of wax"))).toEqual([[100], [""], [6]]);
    const rows: Value[][] = call("RECIPESPLIT", 106, down(1, "x", 0.06), down("part", "of wax", "of wax"));
    expect(messageOf(rows[1]?.[0])).toContain('shares: "x" is text');
    expect(messageOf(rows[0]?.[0])).toContain("row 2");
  });
  it.each([
    [down(3, 1, 6), down("part", "part", "of wax"), 2, "shares: 6 means 600 %; write 6% or 0.06"],
    [down(3, -1, 0.06), down("part", "part", "of wax"), 1, "shares: -1 is below 0; write 0 or more"],
    [
      down(3, 1, 0.06),
      down("parts", "part", "of wax"),
      0,
      'bases: "parts" is not known here; write part, of wax or of total',
    ],
  ])("keeps a wrong share or basis in its own row: %j %j", (shares, bases, wrong, message) => {
    const rows = call("RECIPESPLIT", 212, shares, bases);
    expect(rows.map(([value]) => messageOf(value))).toEqual(
      shares.map((_, i) =>
        i === wrong ? message : `shares: row ${wrong + 1} of the recipe has an error; fix it first`,
      ),
    );
  });
  it("wants wax, and room for it", () => {
    expect(messageOf(call("RECIPESPLIT", 100, down(0.06), down("of wax"))[0]?.[0])).toMatch(/^bases: no wax/);
    const full = call("RECIPESPLIT", 100, down(1, 0.6, 0.4), down("part", "of total", "of total"));
    expect(messageOf(full[0]?.[0])).toBe("shares: loads of total come to 100 %; keep them below 100 %");
  });
});
