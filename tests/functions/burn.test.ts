import { describe, expect, it } from "vitest";
import { CellError, call, cell, down, messageOf } from "./built";

describe("BURNRATE", () => {
  it("leaves out rows with a blank", () => {
    expect(cell("BURNRATE", down(0, 1, null, 2, 4), down(250, 243, 9, 236, 222))).toBeCloseTo(7, 12);
    expect(messageOf(cell("BURNRATE", down(0, 1), down(250, null)), "#N/A")).toContain("weigh at least twice");
    expect(messageOf(cell("BURNRATE", down(0, null, 1), down(250, null, "x")))).toContain(
      'row 3 of the range: weights: "x" is text',
    );
    expect(messageOf(cell("BURNRATE", down(2, 2), down(250, 240)))).toContain("all readings are of one time");
    expect(cell("BURNRATE", down(0, 1), down(250, new CellError("#NUM!")))).toMatchObject({ code: "#NUM!" });
  });
});

describe("BURNHOURS and POOLHOURS", () => {
  it("fill down with their defaults", () => {
    expect(call("BURNHOURS", down(200, 0, null), 5, down(0.1, null, 0.1))).toEqual(down(36, 0, ""));
    expect(call("POOLHOURS", down(7.62, 3, null), down("cm", "in", "in"))).toEqual([
      [expect.closeTo(3, 14)],
      [3],
      [""],
    ]);
  });
});

describe("FLAMECHECK and POOLCHECK", () => {
  // A flame of 3 is harmless in millimetres and not in inches: nothing but the maker knows which was meant.
  it("take no unit of length for granted", () => {
    for (const [id, ...args] of [
      ["POOLHOURS", 3],
      ["FLAMECHECK", 3],
      ["POOLCHECK", 2, 3, 3],
    ] as const) {
      expect(messageOf(cell(id, ...args)), id).toBe("lengthUnit: nothing is given; write mm, cm or in");
    }
  });

  it("are empty when nothing is wrong, cell by cell", () => {
    expect(call("FLAMECHECK", down(75, null, 80), "mm")).toEqual(
      down("", "", "flame 80 mm high, at most 75 mm by EN 15493; trim the wick or test a smaller one"),
    );
    expect(cell("FLAMECHECK", 35, "mm", "tea light")).toContain("at most 30 mm for a tea light"); // EN 15493
    const rows = call("POOLCHECK", down(3, null, 2, 4), 3, down(3, 3, 3, 3), "in");
    expect(rows.slice(0, 3)).toEqual(
      down("", "", "pool behind: 2 in after 3 h, at least 2.5 in at about an hour an inch"),
    );
    expect(messageOf(rows[3]?.[0])).toContain("wider than the vessel");
  });
});
