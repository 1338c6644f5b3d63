import { describe, expect, it } from "vitest";
import { starterSheet, starterSheets } from "../../../src/runsheet/sheet/starterSheets";
import { isFormer, TABLE_TYPE_IDS, TABLE_TYPES, type TableTypeId } from "../../../src/runsheet/tables/registry";
import type { TableType } from "../../../src/runsheet/tables/tableType";
import type { Sheet } from "../../../src/sheet/sheet";

/** The columns of a table as a new one offers them: `Date {yyyy-mm-dd}`, with where choices come from, `=` for a formula. */
function columnsOf({ cells, tables: [table] = [] }: Sheet): string[] {
  return (table?.headings ?? []).map((heading, place) => {
    const { format, content, look } = cells.find(({ row, column }) => row === 4 && column === place) ?? {};
    const choices = table?.choices?.find((one) => one.heading === heading);
    const from = choices && ("among" in choices ? choices.among.join(" or ") : `${choices.from}[${choices.column}]`);
    const isFormula = content !== undefined && "formula" in content && look === "body";
    return [
      heading,
      ...(format ? [`{${format}}`] : []),
      ...(from ? [`< ${from}`] : []),
      ...(isFormula ? ["="] : []),
    ].join(" ");
  });
}
const [DAY, MONEY, SHARE] = ["{yyyy-mm-dd}", "{#,##0.00}", "{0.0%}"];

describe("a new table", () => {
  it.each<[TableTypeId, string, string[]]>([
    ["pour", "Batch", ["Vessel < Vessels[Vessel]", "Scent < Scents[Scent]", "Quantity", "Fill weight (oz) {0.00} ="]],
    [
      "vessels",
      "Vessels",
      ["Vessel", "Water weight (oz) {0.00}", "Wax factor {0.000}", "Fill weight (oz) {0.00} =", "Wick"],
    ],
    [
      "scents",
      "Scents",
      [
        ...["Scent", `Load (%) ${SHARE}`, "Basis (of wax or of total)", `Wax maximum (%) ${SHARE}`],
        ...[`Product limit (%) ${SHARE}`, "Melt at (F)", "Add at (F)", "Stir (min)", "Pour at (F)", "Flash point (F)"],
        "Cure days",
      ],
    ],
    ["recipes", "Recipes", ["Scent < Scents[Scent]", "Ingredient", "Share", "Basis", "Kind"]],
    [
      "items",
      "Items",
      [
        ...["Item", "Kind", "On hand (oz)", "Pack size (oz)", `Pack price ${MONEY}`],
        ...["Unit price (per oz) {#,##0.00##}", "Reorder below (oz)", "Supplier", `Delivery ${MONEY}`],
      ],
    ],
    ["components", "Components", ["Vessel < Vessels[Vessel]", "Item", "Each"]],
    [
      "moves",
      "Moves",
      [
        ...[`Date ${DAY}`, "Item < Items[Item]", "Lot {@}", "Change (oz) {+0.0##;-0.0##;0}", `Paid ${MONEY}`],
        ...[`Best before ${DAY}`, "Run {@}", "Note"],
      ],
    ],
    [
      "log",
      "Runs log",
      [
        ...["Lot", `Date ${DAY}`, "Scent", "Vessel", "Candles {0}", "Good {0}", "Yield {0%}"],
        ...["Wax planned {0.0##}", "Wax actual {0.0##}", "Scent planned {0.0##}", "Scent actual {0.0##}"],
        ...["Load as weighed (of wax) {0.00%}", "Weighed each {0.0##}", "Water weight {0.0##}"],
        ...["Wax factor shown {0.0000}", "Weights in", "Remarks", "Notes", "Made by", `Cured until ${DAY}`],
        ...[`Loss shown ${SHARE}`, "Pots"],
      ],
    ],
    [
      "burnTests",
      "Burn tests",
      [
        ...["Test", "Vessel < Vessels[Vessel]", "Inside width (mm) {0.0}", "Wick", "Wax", "Scent < Scents[Scent]"],
        ...[`Load (% of wax) ${SHARE}`, "Cure days", `Burn on ${DAY}`, "Product < container or tea light"],
      ],
    ],
    [
      "readings",
      "Readings",
      [
        ...["Test < BurnTests[Test]", "Cycle", "Minutes", "Weight (oz) {0.00}", "Flame (mm)", "Pool (mm)"],
        ...["Pool depth (mm)", "Wax left (mm)", "Soot", "Glass temperature (F)", "Remarks"],
      ],
    ],
  ])("of %s is called %s and has the columns that are read from it", (type, name, columns) => {
    const sheet = starterSheet(type, "oz");
    expect([sheet.name, columnsOf(sheet)]).toEqual([name, columns]);
    // Its title, and in words over all columns what goes into it; these rows stay in sight.
    const [title, note] = sheet.cells;
    expect(title).toMatchObject({ row: 0, column: 0, look: "title", content: { text: name } });
    expect(note).toMatchObject({ row: 1, column: 0, look: "note", across: columns.length });
    expect((note?.content as { text: string } | undefined)?.text).toMatch(/^[A-Z].{40,}\.$/);
    expect(sheet.frozenRows).toBe(4);
  });

  it("is weighed in grams and heated in Celsius where the settings say grams", () => {
    expect(columnsOf(starterSheet("scents", "g"))).toContain("Flash point (C)");
    expect(columnsOf(starterSheet("vessels", "kg"))).toContain("Water weight (kg) {0.000}");
    expect(columnsOf(starterSheet("moves", "g"))).toContain("Change (g) {+0.0##;-0.0##;0}");
  });

  it("of the batch looks fills up in the table of vessels that is there, in its unit, and asks none of one without", () => {
    const formulaOf = (headings: string[], unit: "g" | "oz" = "g") => {
      const [sheet] = starterSheets(unit, [{ name: "Vessels", headings }]).filter(({ name }) => name === "Batch");
      const cell = sheet?.cells.find(({ row, content }) => row === 4 && content && "formula" in content);
      return (cell?.content as { formula: string } | undefined)?.formula;
    };
    const looked =
      'IF(Batch[[#This Row],[Vessel]]="","",INDEX(Vessels[Fill (g)],MATCH(TRIM(Batch[[#This Row],[Vessel]]),Vessels[Jar],0))';
    expect(formulaOf(["Jar", "Fill (g)"])).toBe(`=${looked})`);
    // An ounce is 28.349523125 g, by definition.
    expect(formulaOf(["Jar", "Fill (oz)"])).toBe(`=${looked.replace("(g)", "(oz)")}*28.349523125)`);
    for (const headings of [["Jar", "Water (g)"], ["Fill (g)"], ["Jar", "Fill (ml)"]]) {
      expect(formulaOf(headings)).toBeUndefined();
    }
  });

  it("is offered of what is not there yet, in the order in which it is filled in", () => {
    expect(starterSheets("g").map(({ name }) => name)).toEqual(["Vessels", "Scents", "Batch"]);
    expect(starterSheets("g", [{ name: " scents", headings: [] }]).map(({ name }) => name)).toEqual([
      "Vessels",
      "Batch",
    ]);
  });
});

describe("what is said of each type of table", () => {
  it("tells what it is for and what it gives, whole sentences", () => {
    for (const type of Object.values(TABLE_TYPES) as TableType[]) {
      expect(type.purpose, type.name).toMatch(/^[A-Z].{30,}\.$/s);
      if (!type.isFormer && type !== (TABLE_TYPES.pour as unknown)) {
        expect(type.gives, type.name).toMatch(new RegExp(`^${type.name}[^.]*: .{20,}\\.$`));
      }
    }
  });

  it("offers no table under a name of before", () => {
    expect(TABLE_TYPE_IDS.filter(isFormer)).toEqual(["stock", "prices"]);
  });

  it("knows a runs log that was renamed by its headings, and nothing else", () => {
    const { headings = [] } = starterSheet("log", "g").tables?.[0] ?? {};
    expect(TABLE_TYPES.log.isKnownBy?.(headings)).toBe(true);
    for (const telling of ["Lot", "Scent", "Vessel", "Good", "Wax planned", "Weighed each", "Water weight"]) {
      expect(TABLE_TYPES.log.isKnownBy?.(headings.filter((one) => one !== telling))).toBe(false);
    }
    // The columns of later years need not be there.
    expect(TABLE_TYPES.log.isKnownBy?.(headings.slice(0, 17))).toBe(true);
  });
});
