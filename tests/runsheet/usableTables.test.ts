import { describe, expect, it } from "vitest";
import { buildRun, type Tables } from "../../src/runsheet/buildRun";
import { KINDS, type KindName, matchColumns, missingRoles } from "../../src/runsheet/kinds";
import { FIRST_SETTINGS } from "../../src/runsheet/settings";
import type { CellValue } from "../../src/sheet/sheet";

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
  const { problems, plan } = buildRun(Object.fromEntries(tables) as Tables, { ...FIRST_SETTINGS, load: 0 });
  expect(plan.totals.candles).toBe(2);
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
      "check Vessels is not read: no column for Water weight. Choose it under More tables, or fix the heading",
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
    expect(first).toContain(`${KINDS[kind].name} is not read: no column for`);
  });
});
