import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { lotCode } from "../../../src/core/label/lotCode";

describe("lotCode", () => {
  it.each([
    [61, "1900-03-01", "1900-060"], // the first day after the one that never was
    [36_526, "2000-01-01", "2000-001"], // Excel's serial of 1 January 2000
    [39_448, "2008-01-01", "2008-001"], // the example of Microsoft's help for DATE serials
    [45_351, "2024-02-29", "2024-060"],
    [45_657, "2024-12-31", "2024-366"],
    [46_352, "2026-11-26", "2026-330"],
    [46_352.999, "2026-11-26", "2026-330"],
    [2_958_465, "9999-12-31", "9999-365"], // Excel's last day
  ])("serial %d is %s, or %s", (serial, date, ordinal) => {
    expect(lotCode(serial, 2)).toBe(`${ordinal}-02`);
    expect(new Date(Date.UTC(Number(ordinal.slice(0, 4)), 0, Number(ordinal.slice(5)))).toISOString()).toContain(date);
  });

  it("agrees with a calendar on every day", () => {
    fc.assert(
      fc.property(fc.integer({ min: 61, max: 2_958_465 }), fc.integer({ min: 1, max: 99 }), (serial, run) => {
        const [year, ordinal, number] = lotCode(serial, run).split("-").map(Number);
        const day = new Date(Date.UTC(year as number, 0, ordinal));
        expect((day.getTime() - Date.parse("1899-12-30T00:00:00Z")) / 86_400_000).toBe(serial);
        expect(number).toBe(run);
        expect(lotCode(serial, run)).toMatch(/^\d{4}-\d{3}-\d{2}$/);
      }),
    );
  });

  it("put a prefix in front", () => {
    expect(lotCode(46_352, 2, " SOY ")).toBe("SOY-2026-330-02");
    expect(lotCode(46_352, 2, "x".repeat(20))).toBe(`${"x".repeat(20)}-2026-330-02`);
    expect(lotCode(46_352, 2, " ")).toBe("2026-330-02");
  });

  it("take a run that binary fractions have blurred as the whole number it is", () => {
    expect(lotCode(46_352, 0.3 / 0.1)).toBe("2026-330-03"); // 2.9999999999999996 in binary
    expect(() => lotCode(46_352, 2.999)).toThrow("run: 2.999");
  });

  it("refuse what is no date, run or prefix", () => {
    for (const serial of [-1, 0, 60, 60.9, 2_958_466])
      expect(() => lotCode(serial, 1)).toThrow(/^date: .* is no date from 1 March 1900/);
    for (const run of [0, -1, 1.5, 100])
      expect(() => lotCode(46_352, run)).toThrow(/^run: .*write a whole number from 1 to 99/);
    expect(() => lotCode(46_352, 1, "x".repeat(21))).toThrow("prefix: 21 characters are too long");
  });
});
