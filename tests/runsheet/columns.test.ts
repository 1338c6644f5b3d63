import { describe, expect, it } from "vitest";
import { matchColumns, missingRoles } from "../../src/runsheet/columns";

describe("matching columns by their headings", () => {
  it("takes a heading that is the word before one that only holds it", () => {
    const headings = ["Vessel", "Scent", "Quantity", "Fill weight", "Load", "Basis", "Wax each", "Scent each"];
    expect(matchColumns(headings)).toEqual({ vessel: 0, scent: 1, quantity: 2, fill: 3, load: 4, basis: 5 });
  });
  it("reads units in brackets, capitals and colons as nothing", () => {
    expect(matchColumns(["CONTAINER", "Water weight (g):", "Qty", "Wax factor"])).toEqual({
      vessel: 0,
      water: 1,
      quantity: 2,
      factor: 3,
    });
  });
  it("does not take a cost, a total or a check for what it speaks of", () => {
    const headings = ["Vessel cost", "Scent total", "Load check", "Fill price", "Vessel name"];
    expect(matchColumns(headings)).toEqual({ vessel: 4 });
  });
  it("gives no column two roles", () => {
    const columns = Object.values(matchColumns(["Candle fill", "Fill", "Candles", "Candle"]));
    expect(new Set(columns).size).toBe(columns.length);
  });
  it("knows what is missing, and that water does for a fill", () => {
    expect(missingRoles({})).toEqual(["vessel", "quantity", "fill"]);
    expect(missingRoles({ vessel: 0, quantity: 1, water: 2 })).toEqual([]);
  });
});
