import { describe, expect, it } from "vitest";
import { buildRun } from "../../../src/runsheet/buildRun";
import { isError } from "../../../src/runsheet/problem";
import { FIRST_SETTINGS, type WeightUnit } from "../../../src/runsheet/settings";
import { matchColumns, type TableTypeId } from "../../../src/runsheet/tables/registry";
import type { TableRows, Tables } from "../../../src/runsheet/tables/tableRows";
import type { CellValue } from "../../../src/sheet/sheet";

type Cells = readonly (readonly CellValue[])[];
const table = (type: TableTypeId, headings: readonly string[], rows: Cells, leftOut: readonly string[] = []) =>
  ({ type, headings, rows, columns: matchColumns(type, headings), leftOut }) as TableRows;
const POUR = table("pour", ["Vessel", "Scent", "Quantity", "Fill (g)", "Load"], [["Tin", "Cedar", 10, 200, 0.06]]);

/** What stops the run, by the column that nobody reads. */
function stops(given: TableRows, unit: WeightUnit = "g"): string[] {
  const tables = { pour: POUR, [given.type]: given } as unknown as Tables;
  const { problems } = buildRun(tables, { ...FIRST_SETTINGS, unit });
  return problems.filter((one) => one.unread !== undefined && isError(one)).map(({ text }) => text);
}
/** Items with these units beside their numbers. */
const items = (heading: string, ...units: CellValue[]) =>
  table(
    "items",
    ["Item", heading, "On hand", "Pack size", "Pack price"],
    units.map((unit, i) => [`Item ${i}`, unit, 5, 10, 95]),
  );
const says = (heading: string, what: string, more: string) =>
  `The column "${heading}" is not read: it says ${what}, and the numbers are taken as ${more}; then leave this column out`;
const ALL = "all numbers of a column one unit and write it in brackets in their heading, such as";

describe("a column of units", () => {
  it("stops the run where it says another unit than the numbers are read in, whatever the table", () => {
    expect(stops(items("Unit", "kg", "ml", "pcs"))).toEqual([
      says("Unit", "kg and ml", `g. Weigh what is a volume, give ${ALL} "On hand (g)"`),
    ]);
    const jars = ["Jar", "How many", "Fill", "Unit", "Fragrance", "Load"];
    expect(
      stops(
        table("pour", jars, [
          ["Jar", 4, 20, "oz", "Cedar", 0.06],
          ["Mug", 4, 300, "g", "Cedar", 0.06],
        ]),
      ),
    ).toEqual([says("Unit", "oz", `g. Give ${ALL} "Fill (g)"`)]);
    expect(stops(table("vessels", ["Vessel", "Water weight", "UoM"], [["Tin", 8, "oz"]]))).toEqual([
      says("UoM", "oz", 'g. Write it in brackets in their heading, such as "Water weight (oz)"'),
    ]);
    expect(
      stops(table("moves", ["Date", "Item", "Lot", "Change (g)", "U/M"], [[46352, "Wax", "A1", 10, "Kilos"]])),
    ).toEqual([says("U/M", "kg", 'g. Write it in brackets in their heading, such as "Change (kg)"')]);
    expect(stops(table("components", ["Vessel", "Item", "Each", "Unit"], [["Tin", "Wick", 1, "dozen"]]))).toEqual([
      says(
        "Unit",
        "dozen",
        "they stand. Give all numbers of a column one unit and write it in brackets in their heading",
      ),
    ]);
  });

  it.each([
    "Unit",
    "UNITS",
    "UoM",
    "U.o.M.",
    "U/M",
    "Measure",
    "Unit of measure",
    "Stock unit",
    "Weight unit",
    "Per",
    "",
  ])("is known by its heading or by its cells: %s", (heading) => {
    expect(stops(items(heading, "lb", "each"))).toHaveLength(1);
  });

  it("is passed over where it says the unit that all numbers are read in, pieces, or nothing", () => {
    expect(stops(items("Unit", "g", "Grams", "gr.", "pcs", "ea", "Tins", null, "-", "n/a", ""))).toEqual([]);
    expect(stops(items("Unit", "oz"), "oz")).toEqual([]);
    expect(stops(items("Unit", "g"), "oz")).toHaveLength(1);
    const half = ["Item", "Unit", "On hand (kg)", "Pack size", "Pack price"];
    expect(stops(table("items", half, [["Wax", "kg", 5, 10, 95]]))).toEqual([
      says("Unit", "kg", 'kg and g. Write it in brackets in their heading, such as "Pack size (kg)"'),
    ]);
    const whole = ["Item", "Unit", "On hand (kg)", "Pack size [Kilos]", "Pack price"];
    expect(stops(table("items", whole, [["Wax", "kg", 5, 10, 95]]))).toEqual([]);
  });

  it("stops the run by words that are no unit known here too, and by no other column of words", () => {
    for (const unit of ["Unze", "bag", "%", "5 kg sack", "<b>"])
      expect(stops(items("Unit", "g", unit))).toHaveLength(1);
    expect(stops(items("Unit", ..."abcde"))[0]).toContain("says a, b, c and others, and");
    // Sizes, marks and directions are spelt like units.
    for (const words of [["L", "M", "S"], ["L", "L"], ["C"], ["in"], ["pcs", "ea"], ["g", "blue"]])
      expect(stops(items("Shelf", ...words))).toEqual([]);
    // How many, in a column that is called by it.
    expect(stops(items("Units", 4, 12))).toEqual([]);
  });

  it("is never read as the kind of an item or the name of a wax", () => {
    expect(stops(items("Unit type", "kg"))).toHaveLength(1);
    const waxes = ["Vessel", "Quantity", "Fill (g)", "Scent", "Load", "Wax unit"];
    expect(stops(table("pour", waxes, [["Tin", 4, 200, "Cedar", 0.06, "oz"]]))).toHaveLength(1);
  });

  it("is not asked about once it is left out", () => {
    const { type, headings, rows } = items("Unit", "kg");
    expect(stops(table(type, headings, rows, ["Unit"]))).toEqual([]);
  });
});
