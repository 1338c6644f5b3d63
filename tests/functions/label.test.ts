import { describe, expect, it } from "vitest";
import { call, cell, down, messageOf } from "./built";

describe("NETLABEL", () => {
  it("fills down", () => {
    expect(call("NETLABEL", down(8, null, 595.34), down("oz", "oz", "g"))).toEqual(
      down("Net Wt 8 oz (226 g)", "", "Net Wt 1 lb 5 oz (595 g)"),
    );
    expect(cell("NETLABEL", 8, "oz", "metric")).toBe("226 g");
    expect(messageOf(cell("NETLABEL", 0, "g"))).toBe("weight: 0 is not above 0; write a number above 0");
  });
});

describe("NETCHECK", () => {
  it("gives one row: verdict, mean error, its limit, allowed shortfall, number short", () => {
    expect(call("NETCHECK", 200, down(198, null, 201, 203), "g", "eu")).toEqual([
      ["passes, of a whole lot of 3", expect.closeTo(2 / 3, 12), 0, 9, 0],
    ]);
    expect(call("NETCHECK", 200, down(200, 200), "g", null, 500)[0]).toEqual([
      "not enough weighed: 2, the plan asks for 24",
      0,
      0,
      10.8,
      0,
    ]);
  });
  it("says what is missing", () => {
    expect(messageOf(cell("NETCHECK", 200, down(null), "g"), "#N/A")).toContain("nothing weighed");
    expect(messageOf(cell("NETCHECK", null, down(200), "g"))).toBe("label: the cell is blank; fill it in");
    expect(messageOf(cell("NETCHECK", 200, down(200), null))).toBe("unit: nothing is given; write g, kg, oz or lb");
    expect(messageOf(cell("NETCHECK", 200, down(200, "x"), "g"))).toBe(
      'row 2 of the range: weights: "x" is text; write a plain number',
    );
    expect(messageOf(cell("NETCHECK", 200, [[200, 200, "x"]], "g"))).toContain(
      'cell 3 of the range: weights: "x" is text',
    );
  });
});

describe("LOTCODE", () => {
  it("fills down, with a prefix where there is one", () => {
    expect(call("LOTCODE", down(46_352, null, 46_352.6), down(2, 1, 11), down(null, "A", "A"))).toEqual(
      down("2026-330-02", "", "A-2026-330-11"),
    );
    expect(messageOf(cell("LOTCODE", "2026-11-26", 1))).toBe(
      'date: "2026-11-26" is text; write it as a date, such as =DATE(2026,11,26)',
    );
    expect(messageOf(cell("LOTCODE", " ", 1))).toContain("date: the cell holds only spaces");
    expect(messageOf(cell("LOTCODE", true, 1))).toContain("date: TRUE is not a number");
    expect(messageOf(cell("LOTCODE", 46_352, null))).toBe("run: the cell is blank; fill it in");
  });
});
