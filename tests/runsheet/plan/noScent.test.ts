import { describe, expect, it } from "vitest";
import { buildRun } from "../../../src/runsheet/buildRun";
import { nameOf } from "../../../src/runsheet/plan/runPlan";
import { isError } from "../../../src/runsheet/problem";
import { FIRST_SETTINGS } from "../../../src/runsheet/settings";
import { isNoScent } from "../../../src/runsheet/tables/isNoScent";
import { matchColumns, type TableTypeId } from "../../../src/runsheet/tables/registry";
import type { Tables } from "../../../src/runsheet/tables/tableRows";
import type { CellValue } from "../../../src/sheet/sheet";

/** Tins of 200 g with these scents and loads, the default load 6 % of wax. */
function run(rows: readonly CellValue[][], more: Partial<Record<TableTypeId, CellValue[][]>> = {}) {
  const pour: CellValue[][] = [
    ["Vessel", "Quantity", "Fill (g)", "Scent", "Load"],
    ...rows.map((row) => ["Tin", 4, 200, ...row]),
  ];
  const tables = Object.entries({ pour, ...more }).map(([type, [headings = [], ...all]]) => {
    const names = headings.map(String);
    return [type, { type, headings: names, rows: all, columns: matchColumns(type as TableTypeId, names) }];
  });
  const made = buildRun(Object.fromEntries(tables) as Tables, { ...FIRST_SETTINGS, loss: 0 });
  return {
    poured: made.plan.scents.map((scent) => `${nameOf(scent)} ${scent.load}`),
    things: made.things.map(({ name }) => name),
    said: made.problems
      .filter(({ text }) => !text.endsWith("not checked"))
      .map((one) => `${isError(one) ? "fix" : "check"} ${one.row} ${one.field}: ${one.text}`),
  };
}
const WORDS = [
  ...["Unscented", "UNSCENTED", "un-scented", "Unscented candle", "Unfragranced", "none", "(none)", "No scent", "nil"],
  ...["no fragrance", "No fragrance oil", "no FO", "no oil", "without scent", "no added fragrance", "Scent free"],
  ...["fragrance-free", "scent-free", "n/a", "N/A", "N / A", "n.a.", "-", "–", "--"],
];

describe("a scent that says that there is none", () => {
  it.each(WORDS)("is poured without scent, by no default load, and that is said: %s", (word) => {
    const { poured, things, said } = run([[word], ["Cedar", 0.06]]);
    expect(poured).toEqual(["Unscented 0", "Cedar 0.06"]);
    expect(things).toEqual(["Wax", "Cedar", "Tin"]);
    expect(said).toEqual([`check 0 scent: "${word}" is taken for no scent, load 0 %`]);
  });

  it("is not spoken of where its load is 0, and is fixed where it is above 0", () => {
    expect(run([["none", 0]])).toMatchObject({ poured: ["Unscented 0"], said: [] });
    const { poured, said } = run([
      ["none", 0.06],
      ["Cedar", 0.06],
    ]);
    expect(poured).toEqual(["Cedar 0.06"]);
    expect(said).toEqual(['fix 0 load: Load: the scent is "none" and has a load; name the scent, or write 0 %']);
  });

  it("shares its pot with all of them", () => {
    expect(run([["none"], ["-", 0], ["Unscented"]]).poured).toEqual(["Unscented 0"]);
  });

  it("keeps the name that the table of scents knows, and is fixed where that gives it a load", () => {
    const scents = (load: CellValue): CellValue[][] => [
      ["Scent", "Load", "Wax maximum"],
      ["no scent", load, 0.1],
    ];
    expect(run([["No scent"]], { scents: scents(0) })).toMatchObject({ poured: ["No scent 0"], said: [] });
    expect(run([["No scent"]], { scents: scents(null) }).said).toEqual([
      'check 0 scent: "No scent" is taken for no scent, load 0 %',
    ]);
    expect(run([["No scent"]], { scents: scents(0.06) }).said).toContain(
      'fix 0 load: Load: the scent is "No scent" and has a load in the table of scents; name the scent, or write 0 %',
    );
    // One that the table does not know is not asked about as a slip of a name.
    expect(run([["none"]], { scents: scents(0) }).said).toHaveLength(1);
  });

  it("is what its recipe makes of it, where it has one", () => {
    const recipes: CellValue[][] = [
      ["Scent", "Ingredient", "Share", "Basis"],
      ["Unscented", "Soft wax", 3, "part"],
      ["Unscented", "Hard wax", 1, "part"],
    ];
    const made = run([["Unscented"]], { recipes });
    expect(made).toMatchObject({ poured: ["Unscented 0"], said: [] });
    expect(made.things.slice(0, 2)).toEqual(["Soft wax", "Hard wax"]);
  });

  it("is no other name", () => {
    for (const name of ["Nonesuch", "No. 5", "Oil of none", "Bare", "Natural", "N", "Free", "na na", "No", ""])
      expect(isNoScent(name), name).toBe(false);
  });
});
