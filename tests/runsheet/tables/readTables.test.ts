import { describe, expect, it } from "vitest";
import { buildRun } from "../../../src/runsheet/buildRun";
import { isError } from "../../../src/runsheet/problem";
import { FIRST_SETTINGS } from "../../../src/runsheet/settings";
import { matchColumns, missingFields, TABLE_TYPES, type TableTypeId } from "../../../src/runsheet/tables/registry";
import type { Tables } from "../../../src/runsheet/tables/tableRows";
import type { CellValue } from "../../../src/sheet/sheet";

const table = (kind: TableTypeId, [headings = [], ...rows]: CellValue[][]) => ({
  type: kind,
  headings: headings.map(String),
  rows,
  columns: matchColumns(kind, headings.map(String)),
});
const said = (more: Partial<Record<TableTypeId, CellValue[][]>>) => {
  const tables = Object.entries({
    pour: [
      ["Vessel", "Quantity", "Fill"],
      ["Tin", 2, 200],
    ],
    ...more,
  }).map(([kind, cells]) => [kind, table(kind as TableTypeId, cells as CellValue[][])]);
  const { problems } = buildRun(Object.fromEntries(tables) as Tables, { ...FIRST_SETTINGS, load: 0 });
  return problems.map((one) => `${isError(one) ? "fix" : "check"} ${one.text}`);
};

describe("a table that lacks a column it needs", () => {
  it("is not read, and that is said with what is missing", () => {
    expect(
      said({
        vessels: [
          ["Vessel", "Colour"],
          ["Tin", "red"],
        ],
      }),
    ).toEqual([
      "check Vessels is not read: no column for Water weight. Fix the heading, or choose the column or no table under More tables",
    ]);
    expect(
      said({
        stock: [
          ["Item", "Shade"],
          ["Tin", "red"],
        ],
      })[0],
    ).toContain("Stock is not read: no column for On hand");
  });

  it.each((Object.keys(TABLE_TYPES) as TableTypeId[]).filter((kind) => kind !== "pour"))("of the kind %s", (kind) => {
    expect(missingFields(kind, matchColumns(kind, ["Colour"]))).not.toEqual([]);
    const [first] = said({ [kind]: [["Colour"], ["red"]] });
    const stops = kind === "recipes" || kind === "scents";
    expect(first).toContain(`${stops ? "fix" : "check"} ${TABLE_TYPES[kind].name} is not read: no column for`);
  });
});

describe("a number beyond what a spreadsheet keeps", () => {
  it.each(["Quantity", "Fill", "Load"])("of %s is a slip, and what it would come to is not said", (heading) => {
    const cells = { Vessel: "Tin", Quantity: 4, Fill: 200, Load: 0.06, [heading]: 1.7e308 };
    const batch = table("pour", [Object.keys(cells), Object.values(cells)]);
    const { problems } = buildRun({ pour: batch } as unknown as Tables, FIRST_SETTINGS);
    expect(problems.map(({ text }) => text)).toContainEqual(
      expect.stringMatching(/: 1.7e\+308 is too large; check its digits$/),
    );
  });
});

describe("a number that is kept as text", () => {
  it.each([
    ["8%", '"8%" is kept as text; choose "Text to Number" in the menu of the cell'],
    ["12", '"12" is kept as text; choose "Text to Number" in the menu of the cell'],
    ["12 pcs", '"12 pcs" is text: write 12, without words'],
    ["0,86", '"0,86" is text: write 0.86'],
  ])("%s", (typed, text) => {
    const batch = table("pour", [
      ["Vessel", "Quantity", "Fill"],
      ["Tin", typed, 200],
    ]);
    const { problems } = buildRun({ pour: batch } as unknown as Tables, { ...FIRST_SETTINGS, load: 0 });
    expect(problems[0]?.text.startsWith(`Quantity: ${text}`)).toBe(true);
  });
});
