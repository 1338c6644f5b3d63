import { describe, expect, it } from "vitest";
import { buildRun, type Tables } from "../../../src/runsheet/plan/buildRun";
import { FIRST_SETTINGS } from "../../../src/runsheet/settings";
import { KINDS, type KindName, matchColumns, missingRoles } from "../../../src/runsheet/tables/kinds";
import type { CellValue } from "../../../src/sheet/sheet";

const table = (kind: KindName, [headings = [], ...rows]: CellValue[][]) => ({
  kind,
  headings: headings.map(String),
  rows,
  columns: matchColumns(kind, headings.map(String)),
});
const said = (more: Partial<Record<KindName, CellValue[][]>>) => {
  const tables = Object.entries({
    pour: [
      ["Vessel", "Quantity", "Fill"],
      ["Tin", 2, 200],
    ],
    ...more,
  }).map(([kind, cells]) => [kind, table(kind as KindName, cells as CellValue[][])]);
  const { problems } = buildRun(Object.fromEntries(tables) as Tables, { ...FIRST_SETTINGS, load: 0 });
  return problems.map(({ text, stops }) => `${stops ? "fix" : "check"} ${text}`);
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

  it.each((Object.keys(KINDS) as KindName[]).filter((kind) => kind !== "pour"))("of the kind %s", (kind) => {
    expect(missingRoles(kind, matchColumns(kind, ["Colour"]))).not.toEqual([]);
    const [first] = said({ [kind]: [["Colour"], ["red"]] });
    const stops = kind === "recipes" || kind === "scents";
    expect(first).toContain(`${stops ? "fix" : "check"} ${KINDS[kind].name} is not read: no column for`);
  });
});

describe("a number that is kept as text", () => {
  it.each([
    ["8%", '"8%" is kept as text; type it again; if it stays text, give the cell another number format first'],
    ["12", '"12" is kept as text; type it again; if it stays text, give the cell another number format first'],
    ["12 pcs", '"12 pcs" is not a number; write a plain number'],
    ["0,86", '"0,86" is not a number; write a plain number'],
  ])("%s", (typed, text) => {
    const batch = table("pour", [
      ["Vessel", "Quantity", "Fill"],
      ["Tin", typed, 200],
    ]);
    const { problems } = buildRun({ pour: batch } as unknown as Tables, { ...FIRST_SETTINGS, load: 0 });
    expect(problems[0]?.text).toBe(`Quantity: ${text}`);
  });
});
