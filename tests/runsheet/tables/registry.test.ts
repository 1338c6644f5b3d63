import { inspect } from "node:util";
import { describe, expect, it } from "vitest";
import { sameName } from "../../../src/runsheet/sameName";
import { CHOICES } from "../../../src/runsheet/settings";
import { starterSheet } from "../../../src/runsheet/sheet/starterSheets";
import { readTable } from "../../../src/runsheet/tables/readTables";
import { matchColumns, missingFields, TABLE_TYPE_IDS, TABLE_TYPES } from "../../../src/runsheet/tables/registry";
import { tableType } from "../../../src/runsheet/tables/tableType";

describe("matching columns by their headings", () => {
  it("takes a heading that is the word before one that only holds it", () => {
    const headings = ["Vessel", "Scent", "Quantity", "Fill weight", "Load", "Basis", "Wax each", "Scent each"];
    expect(matchColumns("pour", headings)).toEqual({ vessel: 0, scent: 1, quantity: 2, fill: 3, load: 4, basis: 5 });
  });
  it("reads units in brackets, capitals and colons as nothing", () => {
    expect(matchColumns("pour", ["CONTAINER", "Water weight (g):", "Qty", "Wax factor"])).toEqual({
      vessel: 0,
      water: 1,
      quantity: 2,
      factor: 3,
    });
  });
  it("does not take a cost, a total or a check for what it speaks of", () => {
    const headings = ["Vessel cost", "Scent total", "Load check", "Fill price", "Vessel name"];
    expect(matchColumns("pour", headings)).toEqual({ vessel: 4 });
  });
  it("gives no column two roles", () => {
    const columns = Object.values(matchColumns("pour", ["Candle fill", "Fill", "Candles", "Candle"]));
    expect(new Set(columns).size).toBe(columns.length);
  });
  it("knows what is missing, and that water does for a fill", () => {
    expect(missingFields("pour", {})).toEqual([["vessel"], ["quantity"], ["fill", "water"]]);
    expect(missingFields("pour", { vessel: 0, quantity: 1, water: 2 })).toEqual([]);
  });
  it("knows the other tables by their headings", () => {
    expect(matchColumns("scents", ["Scent", "Load (%)", "Wax maximum (%)", "Pour at (C)", "Flash point (C)"])).toEqual({
      scent: 0,
      load: 1,
      waxMaximum: 2,
      pour: 3,
      flash: 4,
    });
    expect(matchColumns("stock", ["Item", "On hand (g)", "Pack size (g)", "Pack price"])).toEqual({
      item: 0,
      onHand: 1,
      packSize: 2,
      packPrice: 3,
    });
    expect(missingFields("scents", matchColumns("scents", ["Scent", "Note"]))).toHaveLength(1);
  });
});

describe("names", () => {
  it("are the same in any capitals, with any spaces between and around them", () => {
    const names = ["Amber  jar", " amber jar\u00a0", "AMBER\u00a0\u00a0JAR", "amber\u2009jar", "amber\t jar"];
    expect(new Set(names.map(sameName))).toEqual(new Set(["amber jar"]));
    expect(sameName("Cre\u0300me")).toBe(sameName("Cr\u00e8me"));
    expect(sameName("Amber jar 2")).not.toBe(sameName("Amber jar2"));
  });
});

describe("a type of table", () => {
  it("does not compile without a reader", () => {
    const { read: _, ...readerless } = TABLE_TYPES.prices;
    // @ts-expect-error: this fails the types when it compiles
    expect(tableType(readerless)).not.toHaveProperty("read");
  });

  it.each(TABLE_TYPE_IDS)(
    "%s reads its own starter table, in any unit, and finds nothing wrong in its free rows",
    (type) => {
      for (const unit of CHOICES.unit) {
        const [table] = starterSheet(type, unit).tables ?? [];
        const headings = table?.headings ?? [];
        const columns = matchColumns(type, headings);
        expect(missingFields(type, columns)).toEqual([]);
        const rows = Array.from({ length: table?.rows ?? 0 }, () => headings.map(() => null));
        const read = readTable({ type, headings, rows, columns }, unit);
        expect(inspect(read, { depth: null })).not.toContain("severity");
      }
    },
  );
});
