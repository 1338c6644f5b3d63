import { describe, expect, it } from "vitest";
import { starterSheet } from "../../../src/runsheet/sheet/starterSheets";
import { knownItems } from "../../../src/runsheet/tables/knownItems";
import { readTables } from "../../../src/runsheet/tables/readTables";
import { matchColumns, type TableTypeId } from "../../../src/runsheet/tables/registry";
import type { Tables } from "../../../src/runsheet/tables/tableRows";
import type { CellValue } from "../../../src/sheet/sheet";

const HEADINGS = {
  pour: ["Vessel", "Scent", "Quantity", "Fill weight"],
  recipes: ["Scent", "Ingredient", "Share", "Basis", "Kind"],
  scents: ["Scent", "Load"],
  vessels: ["Vessel", "Water weight", "Wick"],
  components: ["Vessel", "Item", "Each"],
} satisfies Partial<Record<TableTypeId, string[]>>;

const knownIn = (rows: Partial<Record<keyof typeof HEADINGS, CellValue[][]>>) => {
  const tables = Object.entries({ pour: [] as CellValue[][], ...rows }).map(([type, rows]) => {
    const headings = HEADINGS[type as keyof typeof HEADINGS];
    return [type, { type, headings, rows, columns: matchColumns(type as TableTypeId, headings) }];
  });
  return knownItems(readTables(Object.fromEntries(tables) as Tables, "g").rows);
};

const STUDIO = {
  pour: [
    ["Tin", "Fig leaf", 4, 100],
    ["tin ", "Cedar", 4, 100],
    ["Tin", "Unscented", 4, 100],
    [null, null, null, null],
  ] as CellValue[][],
  recipes: [
    ["Fig leaf", "Soy wax", 3, "part", null],
    ["Fig leaf", "Rape wax", 1, "part", null],
    ["Fig leaf", "Fig oil", 0.06, "of wax", "scent"],
    ["Fig leaf", "Green dye", 0.001, "of wax", "dye"],
    ["Fig leaf", "UV filter", 0.001, "of wax", "additive"],
  ] as CellValue[][],
  scents: [
    ["Fig leaf", 0.06],
    ["Moss", 0.05],
    ["Plain, no scent", 0],
  ] as CellValue[][],
  vessels: [["Bowl", 300, "2 x W-21"] as CellValue[], ["Tin", 100, "W-7"] as CellValue[]],
  components: [["Tin", "Lid", 1] as CellValue[], ["Tin", "Wick, W-7", 1] as CellValue[]],
};

describe("the items that other tables name", () => {
  it("are waxes, scents, dyes, vessels, wicks and components, each once and no recipe among them", () => {
    expect(knownIn(STUDIO).map(({ item, kind }) => `${item}: ${kind}`)).toEqual([
      ...["Soy wax: wax", "Rape wax: wax", "Wax: wax", "Fig oil: scent", "Green dye: dye", "UV filter: additive"],
      ...["Cedar: scent", "Moss: scent", "Bowl: vessel", "Tin: vessel", "W-21: component"],
      ...["Lid: component", "Wick, W-7: component"],
    ]);
  });

  it("hold plain wax only where something is poured without a recipe, or where there are none", () => {
    const names = (rows: Parameters<typeof knownIn>[0]) => knownIn(rows).map(({ item }) => item);
    expect(names({ ...STUDIO, pour: STUDIO.pour.slice(0, 1) })).not.toContain("Wax");
    expect(names({})).toEqual(["Wax"]);
  });

  it("stand in the starter table, as text, with free rows below", () => {
    const known = [...Array.from({ length: 20 }, (_, i) => ({ item: `=Item ${i}`, kind: "wax" }))];
    const { cells, tables } = starterSheet("items", "g", undefined, known);
    expect(tables?.[0]).toMatchObject({ row: 3, rows: 24 });
    expect(cells.find(({ row, column }) => row === 4 && column === 0)?.content).toEqual({ text: "=Item 0" });
    expect(cells.find(({ row, column }) => row === 23 && column === 1)?.content).toEqual({ text: "wax" });
    expect(cells.find(({ row, column }) => row === 24 && column === 0)).toMatchObject({ look: "input" });
    expect(starterSheet("moves", "g", undefined, known).tables?.[0]?.rows).toBe(12);
  });
});
