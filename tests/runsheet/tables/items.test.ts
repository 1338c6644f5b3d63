import { describe, expect, it } from "vitest";
import { isError } from "../../../src/runsheet/problem";
import type { WeightUnit } from "../../../src/runsheet/settings";
import type { Use } from "../../../src/runsheet/tables/byUse";
import { readTable } from "../../../src/runsheet/tables/readTables";
import { matchColumns } from "../../../src/runsheet/tables/registry";
import type { CellValue } from "../../../src/sheet/sheet";

type Kind = "items" | "stock" | "prices";
const read = (
  headings: readonly string[],
  rows: readonly CellValue[][],
  type: Kind = "items",
  unit: WeightUnit = "g",
) => {
  const items = readTable({ type, headings, rows, columns: matchColumns(type, headings) }, unit);
  if (!items) throw new Error("no items");
  return items;
};
const HEADINGS = [
  ...["Item", "Kind", "On hand (kg)", "Pack size (kg)", "Pack price", "Unit price (per kg)", "Reorder below (kg)"],
  ...["Supplier", "Delivery"],
];

describe("the table of items", () => {
  it("gives an item's stock, packs, price and reorder level, by weight in the unit asked for, by number as they are", () => {
    const items = read(HEADINGS, [
      ["Soy wax", "wax", 2, 5, 20, null, 3, "North", 6],
      ["soy  WAX", null, 0.5, 20, 70, null, null, "South", null],
      ["Lid", "component", 40, 100, 12, 0.2, 25, null, null],
      ["Fig oil", null, null, null, null, 60, null, null, null],
    ]);
    expect(items.get("soy wax")?.weight).toEqual({
      item: "Soy wax",
      use: "weight",
      isWick: false,
      onHand: 2500,
      offers: [
        { size: 5000, price: 20, supplier: "North", delivery: 6 },
        { size: 20000, price: 70, supplier: "South", delivery: 0 },
      ],
      unitPrice: undefined,
      reorderBelow: 3000,
      wrong: [],
      looks: [],
    });
    expect(items.get("lid")?.count).toMatchObject({ use: "count", onHand: 40, unitPrice: 0.2, reorderBelow: 25 });
    expect(items.get("fig oil")?.weight).toMatchObject({ onHand: undefined, unitPrice: 0.06, use: undefined });
  });

  it.each([
    ["wax", "weight"],
    ["Fragrance oil", "weight"],
    ["Jar", "count"],
    ["wick", "count"],
    ["Packaging", "count"],
    ["gift", undefined],
    ["", undefined],
  ])("of the kind %s is used by %s", (kind, use) => {
    expect(read(["Item", "Kind", "On hand"], [["X", kind, 1]]).get("x")?.count.use).toBe(use);
  });

  it.each<[string, CellValue, string]>([
    ["On hand (kg)", -1, "On hand: -1 is below 0; write 0 or more"],
    ["Pack size (kg)", 0, "Pack size: 0 is not above 0; write a number above 0"],
    ["Unit price (per kg)", "9,50", 'Unit price: "9,50" is text: write 9.5, with the decimal sign of your spreadsheet'],
    ["Delivery", { error: "#N/A" }, "Delivery: the cell shows #N/A; fix it first"],
  ])("says what is wrong in %s", (heading, cell, text) => {
    const row = ["Soy wax", "wax", 2, 5, 20, 4, 3, "North", 6];
    const wrong = read(HEADINGS, [HEADINGS.map((one, i) => (one === heading ? cell : (row[i] ?? null)))]);
    expect(wrong.get("soy wax")?.weight.wrong.map((one) => one.text)).toEqual([text]);
  });

  const asked = (use: Use, unit: WeightUnit, ...headings: string[]) =>
    read(headings, [headings.map((one) => (one === "Item" ? "Soy wax" : 5))], "items", unit)
      .get("soy wax")
      ?.[use].wrong.map((one) => `${isError(one)} ${one.text}`);
  const OF_WHAT =
    'does not say for how much of what is weighed; write the unit that it is for, such as "Unit price (per kg)"';

  it.each(["Unit price", "Price", "Cost", "Price each", "Price ($)", "Price (EUR)", "Our price", "Cost per unit"])(
    "asks for how much of a weight a price is: %s",
    (heading) => {
      expect(asked("weight", "g", "Item", heading)).toEqual([`true The heading ${heading} ${OF_WHAT}`]);
      expect(asked("weight", "g", "Item", "Pack size", "Pack price", heading)).toHaveLength(1);
      // Without a pack the price of what is counted is that of one.
      expect(asked("count", "g", "Item", "On hand", heading)).toEqual([]);
    },
  );

  it("takes a price that says for how much it is, whatever its money", () => {
    for (const heading of [
      "Price per kg",
      "Unit price (per g)",
      "Price/lb",
      "$/oz price",
      "Price (EUR/kg)",
      "Cost, kg",
    ]) {
      for (const use of ["weight", "count"] as const)
        expect(asked(use, "g", "Item", "Pack size", heading), heading).toEqual([]);
    }
    expect(asked("weight", "oz", "Item", "Price")?.join()).toContain('such as "Unit price (per lb)"');
  });

  it("asks whether a price beside packs is the pack's, of what is counted too, and takes one that says it", () => {
    const text =
      'may be the price of a pack or of one unit; write "Pack price", or the unit that it is for, such as "Unit price (per kg)"';
    for (const heading of ["Price", "Price (EUR)", "Net cost"]) {
      for (const use of ["weight", "count"] as const)
        expect(asked(use, "g", "Item", "Pack size", heading)).toEqual([`true The heading ${heading} ${text}`]);
      expect(asked("count", "g", "Item", "Pack size", heading, "Pack price")).toEqual([]);
    }
    for (const price of ["Unit price", "Price each", "Price of one"])
      expect(asked("count", "g", "Item", "Pack size", price)).toEqual([]);
  });

  it("asks nothing of a price that is not written", () => {
    const items = read(
      ["Item", "Pack size (kg)", "Pack price", "Unit price"],
      [
        ["Soy wax", 5, 20, null],
        ["Tin", null, null, 1.5],
      ],
    );
    expect(items.get("soy wax")?.weight.wrong).toEqual([]);
    expect(items.get("tin")?.count).toMatchObject({ unitPrice: 1.5, wrong: [] });
  });

  it("reads tables of before, called Stock and Prices, as items", () => {
    const stock = read(["Item", "On hand (g)", "Pack size (g)", "Pack price"], [["Soy wax", 800, 1000, 4]], "stock");
    expect(stock.get("soy wax")?.weight).toMatchObject({ onHand: 800, offers: [{ size: 1000, price: 4 }] });
    const prices = read(["Item", "Price per kg"], [["Soy wax", 4]], "prices");
    expect(prices.get("soy wax")?.weight).toMatchObject({ onHand: undefined, unitPrice: 0.004 });
    // Columns chosen by hand are kept under these names.
    expect(matchColumns("stock", ["Item", "On hand", "Pack size", "Pack price"])).toEqual({
      ...{ item: 0, onHand: 1, packSize: 2, packPrice: 3 },
    });
    expect(matchColumns("prices", ["Item", "Unit price"])).toEqual({ item: 0, price: 1 });
  });
});
