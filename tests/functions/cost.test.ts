import { describe, expect, it } from "vitest";
import { CellError, call, cell, down, messageOf } from "./built";

describe("CANDLECOST", () => {
  it("takes weights beside prices however they lie, and single cells", () => {
    const cost = (200 * 0.01 + 12 * 0.05 + 1.9 + 1) / 0.98;
    expect(cell("CANDLECOST", [[200, 12]], down(0.01, 0.05), [[1.5, 0.4]], 1, 0.02)).toBeCloseTo(cost, 14);
    expect(cell("CANDLECOST", 200, 0.01)).toBe(2);
  });
  it("leaves out what a candle does not hold, but not what has no price", () => {
    expect(cell("CANDLECOST", down(200, null, ""), down(0.01, 5, null), down(null, 1))).toBe(3);
    expect(messageOf(cell("CANDLECOST", down(200, 12), down(0.01, null)))).toBe(
      "row 2 of the range: unitPrices: the cell is blank; fill it in",
    );
    expect(messageOf(cell("CANDLECOST", down(null), down(null)), "#N/A")).toContain("nothing to cost");
    expect(cell("CANDLECOST", 200, 0.01, new CellError("#REF!", "as it came"))).toEqual(
      new CellError("#REF!", "as it came"),
    );
    expect(messageOf(cell("CANDLECOST", 200, 0.01, down(1, "lid")))).toContain(
      'row 2 of the range: parts: "lid" is text',
    );
    expect(messageOf(cell("CANDLECOST", 200, 0.01, 1, down(1, 2)))).toBe("labour: give one cell, not a range");
  });
});

describe("ASKPRICE, MARGINOF and BREAKEVEN", () => {
  it("fill down, with blank fees as none", () => {
    const prices = call(
      "ASKPRICE",
      down(5.7, 6, null),
      down(0.5, 0.4, 0.5),
      down(0.1, null, 0.1),
      down(0.3, null, 0.3),
    );
    expect(prices).toEqual(down(15, 10, ""));
    expect(call("MARGINOF", prices, down(5.7, 6, 6), down(0.1, null, null), 0)).toEqual([
      [expect.closeTo(0.52, 14)],
      [0.4],
      [""],
    ]);
    // OpenStax, Principles of Accounting, volume 2: 225, 1,100 and 852 units.
    expect(call("BREAKEVEN", down(18_000, 2_475, 23_000), down(100, 3.75, 125), down(20, 1.5, 98))).toEqual(
      down(225, 1100, 852),
    );
  });
  it("say in their own cell what has no answer", () => {
    const rows = call("BREAKEVEN", 100, down(5, 4, 6), 5);
    expect(messageOf(rows[0]?.[0], "#N/A")).toContain("brings nothing");
    expect(messageOf(rows[1]?.[0], "#N/A")).toBe("price: each one sold loses 1; raise the price or lower the cost");
    expect(rows[2]).toEqual([100]);
    expect(messageOf(call("ASKPRICE", 5, down(0.6, 0.5), 0.4)[0]?.[0])).toContain("leave nothing for the cost");
  });
});

describe("STOCKCOST", () => {
  // OpenStax, Principles of Accounting, volume 1: 150 at 21, 225 at 27, 210 at 33, of which 300 are sold.
  const [quantities, prices] = [down(150, null, 225, 210), down(21, 1, 27, 33)];
  it("goes by the oldest lots or by their mean", () => {
    expect(cell("STOCKCOST", quantities, prices, 300)).toBe(7200);
    expect(cell("STOCKCOST", quantities, prices, 585, "First In")).toBe(7200 + 8955);
    expect(cell("STOCKCOST", quantities, prices, 1, "average")).toBeCloseTo(27.615385, 6);
  });
  it("has no answer for more than there is", () => {
    expect(messageOf(cell("STOCKCOST", quantities, prices, 586), "#N/A")).toBe(
      "used: 586 is more than the 585 in stock; add the missing lots",
    );
    expect(messageOf(cell("STOCKCOST", quantities, down(21, 1, null, 33), 3))).toContain(
      "row 3 of the range: unitPrices: the cell is blank",
    );
    expect(messageOf(cell("STOCKCOST", quantities, prices, null))).toBe("used: the cell is blank; fill it in");
  });
});
