import { describe, expect, it } from "vitest";
import { buildRun } from "../../../src/runsheet/buildRun";
import { CAUTIONS } from "../../../src/runsheet/cautions";
import { FIRST_SETTINGS, type Settings } from "../../../src/runsheet/settings";
import { describeRun } from "../../../src/runsheet/sheet/describeRun";
import { AT } from "../../../src/runsheet/sheet/layout";
import { matchColumns, type TableTypeId } from "../../../src/runsheet/tables/registry";
import type { Tables } from "../../../src/runsheet/tables/tableRows";
import type { CellValue } from "../../../src/sheet/sheet";
import { pictured } from "../pictured";

/** Ten tins of 107 g: 100 of wax, 6 of scent and 1 of dye each. All invented. */
const ROWS = {
  pour: [
    ["Vessel", "Quantity", "Fill weight", "Scent"],
    ["Tin", 10, 107, "Cedar"],
  ],
  recipes: [
    ["Scent", "Ingredient", "Share", "Basis", "Kind"],
    ["Cedar", "Soft wax", 1, "part", "wax"],
    ["Cedar", "Cedar oil", 0.06, "of wax", "scent"],
    ["Cedar", "Green dye", 0.01, "of wax", "dye"],
  ],
  scents: [
    ["Scent", "Wax maximum", "Product limit", "Flash point", "Melt at", "Add at", "Stir", "Pour at", "Cure days"],
    ["Cedar", 0.08, 0.07, "93 C", "80 C", "65 C", "2 min", "55 C", 14],
  ],
  vessels: [
    ["Vessel", "Water weight (g)", "Wick"],
    ["Tin", 125, "2 x W-21"],
  ],
  items: [
    ["Item", "On hand", "Pack size", "Pack price", "Unit price (per g)"],
    ["Soft wax", 500, 1000, 9.5, 0.01],
    ["Cedar oil", 100, null, null, 0.05],
    ["Green dye", null, null, null, 0.1],
    ["Tin", 30, null, null, 1],
    ["W-21", 40, null, null, 0.1],
  ],
} satisfies Partial<Record<TableTypeId, CellValue[][]>>;

const TABLES = Object.fromEntries(
  Object.entries(ROWS).map(([type, [headings, ...rows]]) => {
    const names = (headings as CellValue[]).map(String);
    return [type, { type, headings: names, rows, columns: matchColumns(type as TableTypeId, names) }];
  }),
) as object as Tables;

function sheetOf(changes: Partial<Settings>) {
  const settings: Settings = { ...FIRST_SETTINGS, loss: 0, division: 0.1, paper: "a4", costs: "shown", ...changes };
  return describeRun(buildRun(TABLES, settings), { lot: "2026-330-01", date: 46352, settings });
}

/** The columns that cells of one look stand in, by the first text of their row. */
function placesOf(look: string, changes: Partial<Settings>): string[] {
  const { cells } = sheetOf(changes);
  const nameOf = (row: number) => {
    const first = cells.find((cell) => cell.row === row && cell.content && "text" in cell.content);
    return (first?.content as { text: string } | undefined)?.text ?? "";
  };
  return cells.filter((cell) => cell.look === look).map(({ row, column }) => `${nameOf(row)}: ${column}`);
}

describe("a run sheet on paper", () => {
  it("shows in the order of the work what to fetch, weigh, pour and write down", () => {
    // By hand: 10 x 107 g, of which 1000 wax, 60 scent, 10 dye; a tin costs 1 + 0.30 + 0.10, itself 1 and two wicks 0.20.
    expect(pictured(sheetOf({ live: false }))).toEqual([
      "title > 6: Run sheet 2026-330-01 | label > 4 center: Plain numbers",
      "label: Date | body > 2 left: 46352 {yyyy-mm-dd} | label right: Made by | blank > 2 | label right: Checked by | blank > 3",
      "label: Scale reads to (g) | body > 2: 0.1 | label > 2 right: Pot holds (g) | body: 2500 | label > 3 right: Extra to melt (loss) | body left: 0 {0.0##%}",
      "note > 10: Plain numbers: a changed count moves no weight.",
      ...CAUTIONS.map((caution) => `caution > 10: ${caution}`),
      "heading: Fetch and prepare | heading center: Needed | heading center: Ready | heading center: Lot used | heading > 2 | heading center: Needed | heading center: Ready | heading > 2 center: Lot used",
      'name: Soft wax | label right: 1000 {[>=10000]0" g";0.0" g"} | blank | blank: {@} | name > 2: Tin | label right: 10 {0} | blank | blank > 2: {@}',
      'name: Green dye | label right: 10 {[>=10000]0" g";0.0" g"} | blank | blank: {@} | name > 2: Wick: W-21 | label right: 20 {0} | blank | blank > 2: {@}',
      'name: Scent: Cedar oil | label right: 60 {[>=10000]0" g";0.0" g"} | blank | blank: {@} | name > 2: Pots to fill | label right: 1 {0} | blank | > 2',
      "heading: Missing | heading center: Ready | heading center: On hand | heading center: Missing | heading > 6 center: Buy",
      "name: Soft wax (g) | blank | 500 {0.0} | label: 500 {0.0} | name > 5: 1 x 1000 g | 9.5 {#,##0.00}",
      "note > 10: Not compared with what is on hand: Green dye",
      "heading: Totals | heading center: Count | heading center: Pots | heading center: Wax (g) | heading center: Scent (g) | heading center: Melted (g) | heading > 2 center: Yield | heading center: Until | heading center: Cure days",
      "name: Cedar | 10 {0} | 1 {0} | 1000 {0.0} | 60 {0.0} | 1070 {0.0} | > 2 right: = | center: 46366 {yyyy-mm-dd} | body: 14 {General}",
      "total: Total | total: 10 {0} | total: 1 {0} | total: 1000 {0.0} | total: 60 {0.0} | total: 1070 {0.0} | total > 2 right: = | total | total",
      "note > 5: of which dye and additives | note: 10 {0.0} | note",
      "heading: Cedar: pot 1 of 1 | heading center: Share | heading center: Basis | heading center: To weigh (g) | heading center: Actual (g) | heading center: Lot used | heading > 2 center: Steps; flash point 93\u00a0C | heading center: Actual temperature | heading center: Time",
      "name: Soft wax | body: 1 {General} | part | label: 1000 {0.0} | blank: {General} | blank: {@} | Melt at | label: 80 C | blank | blank",
      "name: Green dye | body: 0.01 {0.0##%} | of wax | label: 10 {0.0} | blank: {General} | blank: {@} | Add scent at | label: 65 C | blank | blank",
      "name: Scent: Cedar oil | body: 0.06 {0.0##%} | of wax | label: 60 {0.0} | blank: {General} | blank: {@} | Stir | label: 2 min | blank | blank",
      "total: Total in the pot | total | total | total: 1070 {0.0} | total: = {General} | total | Pour at | label: 55 C | blank | blank",
      "name: Load after rounding | note: 0.06 {0.00%} | body > 2: of wax; weighed: | note: = {0.00%} | note",
      "say > 10: =",
      "heading: Pour into | heading center: Count | heading center: Planned (g) | heading center: Fill each (g) | heading center: Good candles | heading > 2 center: Weight of one, without vessel (g) | heading > 3 center: Net weight to declare",
      "name: Tin | body: 10 {General} | body: 107 {0.00} | label: 107 {0.0} | blank: {General} | blank: {0.00} | name: wick 2 x W-21 | note > 3: =",
      "heading: Cost of materials | heading center: Count | heading | heading center: Each | heading center: Total | heading | heading | heading | heading | heading",
      "name: Tin, Cedar | 10 {0} | 2.6 {#,##0.00} | 26 {#,##0.00}",
      "total: The run | total | total | total | total: 26 {#,##0.00}",
      "name: Notes: anything unusual | blank > 9",
      "blank > 9",
    ]);
  });

  it("marks on a live sheet what may be changed, and nothing of it on one of plain numbers", () => {
    expect(placesOf("input", { live: true })).toEqual([
      ...[`Date: ${AT.figure}`, `Scale reads to (g): ${AT.figure}`, "Scale reads to (g): 5", "Scale reads to (g): 9"],
      `Cedar: ${AT.days}`,
      ...["Soft wax", "Green dye", "Scent: Cedar oil"].map((name) => `${name}: ${AT.share}`),
      ...[`Tin: ${AT.count}`, `Tin: ${AT.fill}`],
    ]);
    expect(placesOf("input", { live: false })).toEqual([]);
    expect(placesOf("mark", { live: true })).toEqual([`Run sheet 2026-330-01: ${AT.mark}`]);
  });

  it("has higher rows where something is written in by hand, and a gap before each block", () => {
    const { cells, heights = {} } = sheetOf({ live: false });
    const heightOf = (text: string) =>
      heights[cells.find(({ content }) => content && "text" in content && content.text === text)?.row ?? -1];
    const [box, line] = [heightOf("Date"), heightOf("Scale reads to (g)")] as [number, number];
    expect(box).toBeGreaterThan(line);
    expect(heightOf("Run sheet 2026-330-01")).toBeGreaterThan(box);
    expect(["Soft wax", "Tin", "Notes: anything unusual"].map(heightOf)).toEqual([box, box, box]);
    // A box to tick needs no more than a line.
    expect(["Soft wax (g)", "Total", "Pour into"].map(heightOf)).toEqual([line, line, line]);
    const used = new Set(cells.map(({ row }) => row));
    const gaps = Object.keys(heights)
      .map(Number)
      .filter((row) => !used.has(row));
    const begins = ["Fetch and prepare", "Missing", "Totals", "Cedar: pot 1 of 1", "Cost of materials"];
    expect(gaps).toEqual(
      [...begins, "Notes: anything unusual"].map(
        (text) => (cells.find(({ content }) => content && "text" in content && content.text === text)?.row ?? 0) - 1,
      ),
    );
    for (const gap of gaps) expect(heights[gap]).toBeLessThan(line);
  });

  it("is printed on the paper of the settings, the title on each page, and many pots from a new page on", () => {
    expect(sheetOf({ live: false }).print).toEqual({ paper: "a4", repeatRows: [0, 0], wholeBlocks: true });
    const pots = sheetOf({ live: false, potCapacity: 600, paper: "letter" });
    const first = pots.cells.find(
      ({ content }) => content && "text" in content && content.text === "Cedar: pot 1 of 2",
    );
    expect(pots.print).toMatchObject({ paper: "letter", newPages: [first?.row] });
  });

  it("names the unit and the decimals of the scale in all weights", () => {
    const ounces = pictured(sheetOf({ live: false, unit: "oz", division: 0.05, potCapacity: 2000 })).join("\n");
    for (const words of ["Scale reads to (oz)", "Pot holds (oz)", "Wax (oz)", "To weigh (oz)", "Planned (oz)"]) {
      expect(ounces).toContain(words);
    }
    expect(ounces).toContain('name: Soft wax | label right: 1000 {[>=1000]0" oz";[>=100]0.0" oz";0.00" oz"}');
    expect(pictured(sheetOf({ live: false, division: 1 })).join("\n")).toContain('label right: 1000 {0" g"}');
    // On a live sheet a finer scale may be written in, and then its decimals are to be seen.
    expect(pictured(sheetOf({ live: true })).join("\n")).toContain('label right: = {[>=10000]0" g";0.0####" g"}');
  });
});
