import { describe, expect, it } from "vitest";
import { buildRun } from "../../../src/runsheet/buildRun";
import { isError } from "../../../src/runsheet/problem";
import {
  type AllTables,
  plannedLoad,
  plannedWax,
  type SeriesPour,
  seriesTables,
} from "../../../src/runsheet/series/seriesNeeds";
import { FIRST_SETTINGS } from "../../../src/runsheet/settings";
import { matchColumns, type TableTypeId } from "../../../src/runsheet/tables/registry";
import type { TableRows } from "../../../src/runsheet/tables/tableRows";
import type { CellValue } from "../../../src/sheet/sheet";

const tableOf = <K extends TableTypeId>(type: K, headings: string[], ...rows: CellValue[][]) =>
  ({ type, headings, rows, columns: matchColumns(type, headings) }) as TableRows<K>;
const SETTINGS = { ...FIRST_SETTINGS, loss: 0 };
/** Six bowls, two wicks; all invented. */
const POUR: SeriesPour = {
  ...{ vessel: "bowl", wicks: ["Size 4", "2 x Size 6"], candles: 6, wax: "", scent: "Rain", load: 0.06 },
};

/** What a series takes by these tables. */
function needs(tables: AllTables, pour: Partial<SeriesPour> = {}) {
  const { tables: made, isFillKnown } = seriesTables({ ...POUR, ...pour }, tables, SETTINGS);
  const { plan, shelf, problems } = buildRun(made, SETTINGS);
  return { isFillKnown, totals: plan.totals, load: plannedLoad(plan), shelf, wrong: problems.filter(isError) };
}

describe("what a series takes", () => {
  it("is worked out from the vessel's own water and factor", () => {
    const vessels = tableOf(
      "vessels",
      ["Vessel", "Water weight (g)", "Wax factor", "Wick"],
      ["Bowl", 100, 0.9, "Size 5"],
    );
    // By hand: 6 x 90 = 540 g, of which 6 in 106 is scent: 30.57 and 509.43, in whole grams.
    expect(needs({ vessels })).toMatchObject({
      ...{ isFillKnown: true, wrong: [], totals: { candles: 6, wax: 509, scent: 31 } },
      load: expect.closeTo(0.06, 12),
    });
  });

  it("takes the fill or the water of the batch where no vessel knows it, and the default factor", () => {
    const fill = tableOf("pour", ["Vessel", "Quantity", "Fill weight (g)"], ["Cup", 1, 50], ["Bowl", 2, 90]);
    expect(needs({ pour: fill }, { scent: "", load: undefined })).toMatchObject({
      ...{ isFillKnown: true, totals: { wax: 540, scent: 0 }, load: undefined, wrong: [] },
    });
    const water = tableOf("pour", ["Vessel", "Quantity", "Water weight (g)"], ["Bowl", 2, 100]);
    // 6 x 86 = 516.
    expect(needs({ pour: water }, { scent: "", load: undefined }).totals.wax).toBe(516);
  });

  it("holds the load against its limit also where no fill is known", () => {
    const scents = tableOf("scents", ["Scent", "Load (%)", "Product limit (%)"], ["Rain", 0.06, 0.05]);
    const { isFillKnown, wrong } = needs({ scents }, { load: undefined });
    expect(isFillKnown).toBe(false);
    expect(wrong.map(({ text }) => text).join()).toMatch(/limit/);
    expect(needs({ scents }, { load: 0.04 })).toMatchObject({ load: expect.closeTo(0.04, 12), wrong: [] });
  });

  it("takes the load that a scent or its recipe has where none is given", () => {
    const scents = tableOf("scents", ["Scent", "Load (%)", "Basis"], ["Rain", 0.06, "of total"]);
    // 6 in 94: by hand.
    expect(needs({ scents }, { load: undefined }).load).toBeCloseTo(6 / 94, 12);
    const unclear = tableOf("scents", ["Scent", "Load (% of total)"], ["Rain", 0.06]);
    expect(needs({ scents: unclear }, { load: undefined }).wrong[0]?.text).toMatch(
      /says of total, and Rain is taken of wax/,
    );
    const recipes = tableOf(
      "recipes",
      ["Scent", "Ingredient", "Share", "Basis"],
      ["Rain", "Soft wax", 1, "part"],
      ["Rain", "Rain oil", 0.07, "of wax"],
    );
    expect(needs({ recipes }, { load: undefined })).toMatchObject({ load: expect.closeTo(0.07, 12), wrong: [] });
  });

  it("is poured in the wax that is named, or that of the scent's recipe, and in the usual one by no name", () => {
    const vessels = tableOf("vessels", ["Vessel", "Water weight (g)"], ["Bowl", 100]);
    const recipes = tableOf(
      "recipes",
      ["Scent", "Ingredient", "Share", "Basis"],
      ["Rain", "Soft wax", 1, "part"],
      ["Rain", "Rain oil", 0.07, "of wax"],
    );
    const waxOf = (tables: AllTables, wax: string) =>
      plannedWax(buildRun(seriesTables({ ...POUR, wax }, tables, SETTINGS).tables, SETTINGS).plan);
    expect(waxOf({ vessels }, "")).toBe("");
    expect(waxOf({ vessels }, "Hard wax")).toBe("Hard wax");
    expect(waxOf({ vessels, recipes }, "")).toBe("Soft wax");
    expect(waxOf({ vessels, recipes }, "Hard wax")).toBe("Hard wax");
    expect(plannedWax({ scents: [], totals: {} as never })).toBe("");
  });

  it("asks the shelf for the wicks to try, equally many of each, and for no approved one", () => {
    const vessels = tableOf("vessels", ["Vessel", "Water weight (g)", "Wick"], ["Bowl", 100, "Size 5"]);
    const components = tableOf("components", ["Vessel", "Item", "Each"], ["Bowl", "Lid", 1]);
    const items = tableOf(
      "items",
      ["Item", "Kind", "On hand"],
      ["Size 4", "wick", 2],
      ["Size 6", "wick", 2],
      ["Bowl", "vessel", 5],
    );
    const { shelf } = needs({ vessels, components, items });
    // Three candles of each wick, of the other one two a candle; six bowls.
    expect(shelf?.lacks.map(({ item, amount, missing }) => [item, amount, missing])).toEqual([
      ["bowl", 6, 1],
      ["Size 4", 3, 1],
      ["Size 6", 6, 4],
    ]);
    expect(shelf?.unchecked).not.toContain("Lid");
  });
});
