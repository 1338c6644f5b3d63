import { describe, expect, it } from "vitest";
import { CellError, call, cell, down, messageOf } from "./built";

describe("PACKPLAN", () => {
  it("takes the shape of the sizes", () => {
    expect(call("PACKPLAN", 12, down(1, 5, 10), down(3, 10, 18))).toEqual(down(2, 0, 1));
    expect(call("PACKPLAN", 12, [[1, 5, 10]], [[3, 10, 18]])).toEqual([[2, 0, 1]]);
    expect(call("PACKPLAN", 12, [[1, 5, 10]], down(3, 10, 18))).toEqual([[2, 0, 1]]);
  });

  it("gives one row of packs for each need of a column", () => {
    const rows = call("PACKPLAN", down(12, null, 0, 5, "much"), [[1, 5, 10]], [[3, 10, 18]]);
    expect(rows.slice(0, 4)).toEqual([
      [2, 0, 1],
      ["", "", ""],
      [0, 0, 0],
      [0, 1, 0],
    ]);
    for (const value of rows[4] ?? []) expect(messageOf(value)).toBe('need: "much" is text; write a plain number');
    expect(messageOf(cell("PACKPLAN", down(12, 5), down(1, 5), down(3, 10)))).toContain("need: a column needs sizes");
  });

  it("leaves out packs with a blank", () => {
    expect(call("PACKPLAN", 12, down(1, 5, null, 10), down(3, null, 1, 18))).toEqual(down(2, "", "", 1));
    expect(messageOf(call("PACKPLAN", 12, down(1, 5), down(null, null))[0]?.[0], "#N/A")).toContain("no pack has both");
    for (const prices of [down(3, 10), down(null, null)]) {
      for (const [value] of call("PACKPLAN", 12, down(null, null), prices)) {
        expect(messageOf(value, "#N/A")).toContain("no pack has both");
      }
    }
    expect(call("PACKPLAN", down(null, 0), [[null, null]], [[null, null]])).toEqual([
      ["", ""],
      ["", ""],
    ]);
  });

  it("keeps an error in its own pack and says which one stops the plan", () => {
    const rows = call("PACKPLAN", 12, down(1, 5), down(3, new CellError("#REF!")));
    expect(messageOf(rows[0]?.[0])).toBe("sizes: pack 2 has an error; fix it first");
    expect(rows[1]?.[0]).toMatchObject({ code: "#REF!" });
    expect(call("PACKPLAN", new CellError("#N/A"), down(1), down(3))[0]?.[0]).toMatchObject({ code: "#N/A" });
    for (const [sizes, prices, message] of [
      [down(1, 0, 5), down(3, 1, 10), "sizes: 0 is not above 0; write a number above 0"],
      [down(1, 2, 5), down(3, -1, 10), "prices: -1 is below 0; write 0 or more"],
    ] as const) {
      expect(call("PACKPLAN", 12, sizes, prices).map(([value]) => messageOf(value))).toEqual([
        "sizes: pack 2 has an error; fix it first",
        message,
        "sizes: pack 2 has an error; fix it first",
      ]);
    }
    expect(messageOf(call("PACKPLAN", 12, down(1, 5), down(3, 1, 2))[0]?.[0])).toContain("ranges of the same size");
  });
});

describe("PACKCOST", () => {
  it("is the price of the plan, need by need", () => {
    const rows = call("PACKCOST", down(12, null, 0, -1), [[1, 5, 10]], [[3, 10, 18]]);
    expect(rows.slice(0, 3)).toEqual(down(24, "", 0));
    expect(messageOf(rows[3]?.[0])).toBe("need: -1 is below 0; write 0 or more");
    expect(cell("PACKCOST", 12, down(1, 5, null, 10), down(3, null, 1, 18))).toBe(24);
    expect(messageOf(cell("PACKCOST", 12, down(null), down(3)), "#N/A")).toContain("no pack has both");
    expect(cell("PACKCOST", 12, down(1, 5), down(3, new CellError("#DIV/0!")))).toMatchObject({ code: "#DIV/0!" });
  });
});

describe("UNITPRICE", () => {
  it("fills down, adds the delivery, and keeps blanks blank", () => {
    expect(
      call(
        "UNITPRICE",
        down(36, null, 32),
        down(2, 1, 2),
        down("kg", "kg", "LB"),
        down("g", "g", "oz"),
        down(4, 4, null),
      ),
    ).toEqual(down(0.02, "", 1));
  });
  it("knows an ounce from a fluid ounce", () => {
    expect(messageOf(cell("UNITPRICE", 10, 16, "floz", "oz"))).toBe(
      "perUnit: oz is a weight and floz a volume; write two units of one kind",
    );
    expect(messageOf(cell("UNITPRICE", 10, 16, null, "oz"))).toContain("sizeUnit: nothing is given; write g, kg,");
  });
});
