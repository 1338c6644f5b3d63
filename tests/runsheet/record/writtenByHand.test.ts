import { describe, expect, it } from "vitest";
import { buildRun } from "../../../src/runsheet/buildRun";
import { compareRuns } from "../../../src/runsheet/record/compareRuns";
import { potsOf } from "../../../src/runsheet/record/correction";
import { isPoured } from "../../../src/runsheet/record/poured";
import { readBack } from "../../../src/runsheet/record/readBack";
import { FIRST_SETTINGS } from "../../../src/runsheet/settings";
import { AT, type SheetColumn } from "../../../src/runsheet/sheet/layout";
import { matchColumns } from "../../../src/runsheet/tables/registry";
import type { CellValue } from "../../../src/sheet/sheet";

type Cells = Partial<Record<SheetColumn, CellValue>>;
function row(key: string, cells: Cells): CellValue[] {
  const made: CellValue[] = Array(AT.key + 1).fill(null);
  for (const [column, value] of Object.entries(cells)) made[AT[column as SheetColumn]] = value;
  made[AT.key] = key;
  return made;
}

/** A run of one pot: ten tins of cedar, with these cells written into its rows. All invented. */
function poured({ wax = {}, vessel = {}, thing = {} }: { wax?: Cells; vessel?: Cells; thing?: Cells } = {}) {
  return readBack([
    ["Run sheet 2026-330-01"],
    ["Date", 46352],
    ["Scale reads to (g)", 1],
    row("* thing", { name: "Soft wax", thing: "wax soft wax", ...thing }),
    row("1 pot", { name: "Cedar: pot 1 of 1" }),
    row("1 wax", {
      ...{
        name: "Soft wax",
        share: 1,
        basis: "part",
        planned: 1000,
        thing: "wax soft wax",
        step: "Melt at",
        target: "80 C",
      },
      ...wax,
    }),
    row("1 scent", { name: "Scent: Cedar oil", share: 0.06, basis: "of wax", planned: 60 }),
    row("1 melted", { name: "Total in the pot", planned: 1060 }),
    row("1 vessel", { name: "Tin", count: 10, fill: 106, fillShown: 106, ...vessel }),
  ]);
}

describe("what is written on a run sheet by hand", () => {
  it("is read without the spaces around it, and a time as a clock shows it", () => {
    const done = (temperature: CellValue, time: CellValue) => poured({ wax: { temperature, time } })?.pots[0]?.done;
    expect(done(" 78 C ", " about 9 ")).toEqual(["Melt at 78 C, about 9"]);
    // 9:45 is 0.40625 of a day; a minute past midnight is shown with both figures.
    expect(done(78, 0.40625)).toEqual(["Melt at 78, 9:45"]);
    expect(done(null, 1 / 1440)).toEqual(["Melt at 0:01"]);
    // No share of a day is no time of one.
    expect(done(null, 9)).toEqual(["Melt at 9"]);
    expect(done(null, 1)).toEqual(["Melt at 1"]);
    expect(done("", null)).toEqual([]);
  });

  it("names the lot of a pot before that of the list", () => {
    const lot = (own: CellValue, list: CellValue) =>
      poured({ wax: { lotUsed: own }, thing: { lot: list } })?.pots[0]?.parts[0]?.lot;
    expect([lot(" W-7 ", "W-6"), lot(" ", " W-6 "), lot(null, null), lot(11, null)]).toEqual(["W-7", "W-6", "", "11"]);
  });

  it("makes a pot one that was poured: a weight, or a count of good candles, or a weighed one", () => {
    const isOne = (cells: Parameters<typeof poured>[0]) => isPoured(poured(cells)?.pots[0] as never);
    expect(isOne({})).toBe(false);
    expect(isOne({ wax: { lotUsed: "W-7", temperature: 78 } })).toBe(false);
    expect([
      isOne({ wax: { actual: 0 } }),
      isOne({ vessel: { good: 0 } }),
      isOne({ vessel: { weighed: 105 } }),
    ]).toEqual([...[true, true, true]]);
  });
});

describe("the pots that a move names", () => {
  it("are all where none of the sheet is missing, and none of a sheet without pots", () => {
    expect(potsOf(["B", "A"], ["A", "B"])).toBe("all");
    expect(potsOf(["A"], ["A", "B"])).toEqual(["A"]);
    expect(potsOf([], [])).toEqual([]);
  });
});

describe("a run sheet beside a plan made now", () => {
  const HEADINGS = ["Vessel", "Quantity", "Fill weight", "Scent", "Load"];
  const changes = (...rows: CellValue[][]) => {
    const pour = { type: "pour" as const, headings: HEADINGS, rows, columns: matchColumns("pour", HEADINGS) };
    const recipes = ["Scent", "Ingredient", "Share", "Basis"];
    const { plan } = buildRun(
      {
        pour,
        recipes: {
          ...{ type: "recipes" as const, headings: recipes, columns: matchColumns("recipes", recipes) },
          rows: [
            ["Cedar", "Soft wax", 1, "part"],
            ["Cedar", "Cedar oil", 0.06, "of wax"],
          ],
        },
      },
      { ...FIRST_SETTINGS, loss: 0 },
    );
    const old = poured({ wax: { target: null, step: null } });
    if (!old) throw new Error("no run");
    return compareRuns(old, plan);
  };

  it("says nothing where both are one", () => {
    expect(changes(["Tin", 10, 106, "Cedar", null])).toEqual([]);
    expect(changes(["tin ", 10, 106, "CEDAR", null])).toEqual([]);
  });

  it("says what is more, what is filled otherwise, what is new and what is left out", () => {
    expect(changes(["Tin", 12, 106, "Cedar", null])).toEqual([
      "Tin, Cedar: 10 before, 12 now",
      "Cedar: Soft wax 1000 before, 1200 now",
      "Cedar: Scent: Cedar oil 60 before, 72 now",
    ]);
    // Both fills in one order, whichever row stands first.
    expect(changes(["Tin", 4, 110, "Cedar", null], ["Tin", 6, 106, "Cedar", null])[0]).toBe(
      "Tin, Cedar: fill 106 before, 106 and 110 now",
    );
    expect(changes(["Bowl", 10, 106, "Cedar", null])).toEqual(["Bowl, Cedar: new, 10", "Tin, Cedar: left out, was 10"]);
    expect(changes(["Tin", 10, 106, "Cedar", null], ["Tin", 1, 100, "Fig", 0])).toContain("Tin, Fig: new, 1");
  });
});
