import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { burnHours } from "../../../src/core/burn/burnHours";
import { flameCheck } from "../../../src/core/burn/flameCheck";
import { poolCheck } from "../../../src/core/burn/poolCheck";
import { poolHours } from "../../../src/core/burn/poolHours";

const MILLIMETRES = { mm: 1, cm: 10, in: 25.4 }; // the inch: 16 CFR 500.19
const unit = fc.constantFrom("mm" as const, "cm" as const, "in" as const);

describe("burnHours", () => {
  it("burns a taper's 0.1 g a minute", () => {
    // About 0.1 g/min: a paraffin taper, citing Hamins, Bundy and Dillon 2005, at second hand.
    expect(burnHours(60, 0.1 * 60)).toBeCloseTo(10, 12);
    expect(burnHours(200, 5, 0.1)).toBeCloseTo(36, 12);
  });
  it("leaves what it was told to leave", () => {
    const above = fc.double({ min: 0.01, max: 1e4, noNaN: true });
    fc.assert(
      fc.property(above, above, fc.double({ min: 0, max: 0.99, noNaN: true }), (wax, rate, leave) => {
        expect(wax - burnHours(wax, rate, leave) * rate).toBeCloseTo(wax * leave, 8);
      }),
    );
  });
  it("refuses a candle that does not burn", () => {
    expect(() => burnHours(200, 0)).toThrow("rate: 0 is not above 0");
    expect(() => burnHours(-200, 5)).toThrow("wax: -200 is below 0");
    expect(() => burnHours(200, 5, 10)).toThrow("leave: 10 means 1000 %; write 10% or 0.1");
  });
});

describe("poolHours", () => {
  it("is an hour an inch (common practice, no source), in every unit", () => {
    expect(poolHours(3, "in")).toBe(3);
    expect(poolHours(7.62, "cm")).toBeCloseTo(3, 14);
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1e3, noNaN: true }), unit, (diameter, one) => {
        expect(poolHours(diameter, one)).toBeCloseTo((diameter * MILLIMETRES[one]) / 25.4, 9);
      }),
    );
    expect(() => poolHours(-1, "cm")).toThrow("diameter: -1 is below 0");
    expect(() => poolHours(1, "m")).toThrow('lengthUnit: "m" is not known here; write mm, cm or in');
  });
});

describe("flameCheck", () => {
  it("allows 75 mm (EN 15493) and not a micrometre more, in every unit", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 200_000 }), unit, (micrometres, one) => {
        const says = flameCheck(micrometres / 1000 / MILLIMETRES[one], one);
        expect(says === "").toBe(micrometres <= 75_000);
      }),
      { numRuns: 1000 },
    );
    for (const one of ["mm", "cm", "in"] as const) {
      expect(flameCheck(75 / MILLIMETRES[one], one)).toBe("");
      expect(flameCheck(75.001 / MILLIMETRES[one], one)).not.toBe("");
    }
  });
  it("says what is wrong in millimetres, and in the unit it was given", () => {
    expect(flameCheck(80, " MM")).toContain("flame 80 mm high, at most");
    expect(flameCheck(3.1, "in ")).toBe(
      "flame 3.1 in (78.74 mm) high, at most 75 mm by EN 15493; trim the wick or test a smaller one",
    );
  });
  it("allows a tea light 30 mm (EN 15493)", () => {
    expect(flameCheck(30, "mm", "Tea light")).toBe("");
    expect(flameCheck(3.1, "cm", "tea light")).toBe(
      "flame 3.1 cm (31 mm) high, at most 30 mm for a tea light by EN 15493; trim the wick or test a smaller one",
    );
    expect(flameCheck(31, "mm", "container")).toBe("");
    expect(() => flameCheck(30, "mm", "pillar")).toThrow(
      'product: "pillar" is not known here; write container or tea light',
    );
    expect(() => flameCheck(-1, "mm")).toThrow("height: -1 is below 0");
  });
});

describe("poolCheck", () => {
  // An hour an inch: common practice, no source; half an hour either way is how it is taken here.
  it.each([
    [3, 3, 3, ""],
    [2.5, 3, 3, ""],
    [2.4, 3, 3, "pool behind: 2.4 in after 3 h, at least 2.5 in at about an hour an inch"],
    [2.9, 3, 4, "pool behind: 2.9 in after 4 h, at least 3 in at about an hour an inch"],
    [3, 3, 2.5, ""],
    [3, 3, 2, "pool ahead: 3 in after 2 h, at most 2.5 in at about an hour an inch"],
    [0, 3, 0.5, ""],
    [3, 3, 4, ""],
    [3, 3, 4.5, "burnt 4.5 h, at most 4 h at a time by fire-safety guidance"],
    [
      2,
      3,
      5,
      "pool behind: 2 in after 5 h, at least 3 in at about an hour an inch; burnt 5 h, at most 4 h at a time by fire-safety guidance",
    ],
  ])("a pool of %d in a vessel of %d after %d hours: %s", (pool, vessel, hours, says) => {
    expect(poolCheck(pool, vessel, hours, "in")).toBe(says);
  });

  it("says hours in four digits", () => {
    // A minute, in hours.
    expect(poolCheck(25, 70, 1 / 60, "mm")).toBe(
      "pool ahead: 25 mm after 0.01667 h, at most 13.12 mm at about an hour an inch",
    );
    expect(poolCheck(70, 70, 241 / 60, "mm")).toBe("burnt 4.017 h, at most 4 h at a time by fire-safety guidance");
  });

  it("says the same in every unit", () => {
    const tenths = fc.integer({ min: 0, max: 60 });
    fc.assert(
      fc.property(tenths, fc.integer({ min: 10, max: 60 }), tenths, unit, (pool, vessel, hours, one) => {
        fc.pre(pool <= vessel);
        const given = (inches: number) => (inches / 10) * (25.4 / MILLIMETRES[one]);
        const says = poolCheck(given(pool), given(vessel), hours / 10, one);
        expect(says.includes("behind")).toBe(pool < Math.min(vessel, hours - 5));
        expect(says.includes("ahead")).toBe(pool > hours + 5);
        expect(says.includes("at a time")).toBe(hours > 40);
      }),
      { numRuns: 1000 },
    );
  });

  it("refuses a pool wider than its vessel", () => {
    expect(() => poolCheck(8, 7.5, 3, "cm")).toThrow("pool: 8 is wider than the vessel, 7.5");
    expect(() => poolCheck(-1, 7.5, 3, "cm")).toThrow("pool: -1 is below 0");
    expect(() => poolCheck(1, 0, 3, "cm")).toThrow("vessel: 0 is not above 0");
    expect(() => poolCheck(1, 7.5, -3, "cm")).toThrow("hours: -3 is below 0");
  });
});
