import { describe, expect, it } from "vitest";
import { buildRun } from "../../../src/runsheet/buildRun";
import { isError } from "../../../src/runsheet/problem";
import { FIRST_SETTINGS, type Settings } from "../../../src/runsheet/settings";
import { matchColumns, type TableTypeId } from "../../../src/runsheet/tables/registry";
import type { Tables } from "../../../src/runsheet/tables/tableRows";
import type { CellValue } from "../../../src/sheet/sheet";

/** Tables as they stand on sheets, the first row the headings. */
function made(given: Partial<Record<TableTypeId, CellValue[][]>>, settings: Partial<Settings> = {}) {
  const tables = Object.entries(given).map(([type, [headings = [], ...rows]]) => {
    const names = headings.map(String);
    return [type, { type, headings: names, rows, columns: matchColumns(type as TableTypeId, names) }];
  });
  const all = { ...FIRST_SETTINGS, potCapacity: 5000, loss: 0, division: 0.1, ...settings };
  return buildRun(Object.fromEntries(tables) as Tables, all);
}
const texts = (...args: Parameters<typeof made>) =>
  made(...args)
    .problems.map((one) => `${isError(one) ? "fix" : "check"}: ${one.text}`)
    .filter((text) => !text.endsWith("not known: not checked"));

describe("the default load", () => {
  const pour: CellValue[][] = [
    ["Vessel", "Quantity", "Fill", "Scent"],
    ["Tin", 2, 106, "Fig"],
    ["Jar", 2, 106, "Moss"],
    ["Cup", 1, 106, "Fig"],
  ];

  it("is said once, with the scents that it is taken for", () => {
    expect(texts({ pour })).toEqual([
      "check: The default load, 6 % of wax, is taken for Fig and Moss: nothing else says what it is",
    ]);
    const scents: CellValue[][] = [
      ["Scent", "Load", "Wax maximum"],
      ["Fig", null, 0.1],
      ["Moss", 0.08, 0.1],
    ];
    expect(texts({ pour, scents })).toEqual([
      "check: The default load, 6 % of wax, is taken for Fig: nothing else says what it is",
    ]);
    // A scent that the table does not have is said there.
    expect(texts({ pour, scents: scents.filter(([name]) => name !== "Moss") })).toEqual([
      "check: The default load, 6 % of wax, is taken for Fig: nothing else says what it is",
      "check: Moss is not in the table of scents; the default load, 6 % of wax, is taken",
    ]);
    expect(texts({ pour: pour.map((row) => row.slice(0, 3)) })).toEqual([
      "check: The default load, 6 % of wax, is taken for candles whose scent is not named: nothing else says what it is",
    ]);
  });

  it("is not said where it serves nothing", () => {
    expect(texts({ pour: pour.map((row, i) => [...row, i === 0 ? "Load" : 0.06]) })).toEqual([]);
    expect(texts({ pour }, { load: 0 })).toEqual([]);
    const recipes: CellValue[][] = [
      ["Scent", "Ingredient", "Share", "Basis"],
      ...["Fig", "Moss"].flatMap((scent) => [
        [scent, "Soy", 1, "part"],
        [scent, "Oil", 0.06, "of wax"],
      ]),
    ];
    expect(texts({ pour, recipes })).toEqual([]);
  });
});

describe("the basis of a load", () => {
  it("is of total where the column of bases says total, in each table", () => {
    const pour = (basis: string): CellValue[][] => [
      ["Vessel", "Quantity", "Fill", "Scent", "Load", "Basis"],
      ["Tin", 1, 100, "Fig", 0.1, basis],
    ];
    // 10 of 100, by the meaning of the word.
    expect(made({ pour: pour("Total") }).plan.totals).toMatchObject({ wax: 90, scent: 10 });
    expect(texts({ pour: pour("wax") })[0]).toMatch(/^fix: Basis: "wax" is not known here/);
    const scents: CellValue[][] = [
      ["Scent", "Load", "Basis"],
      ["Fig", 0.1, "total"],
    ];
    expect(made({ pour: pour("").map((row) => row.slice(0, 4)), scents }).plan.totals).toMatchObject({ scent: 10 });
    const recipes: CellValue[][] = [
      ["Scent", "Ingredient", "Share", "Basis"],
      ["Fig", "Soy", 1, "part"],
      ["Fig", "Oil", 0.1, "total"],
    ];
    expect(made({ pour: pour("").map((row) => row.slice(0, 4)), recipes }).plan.totals).toMatchObject({ scent: 10 });
  });
});

describe("the shares of a recipe", () => {
  const said = (...rows: [share: CellValue, basis: string, kind?: string][]) =>
    texts({
      pour: [
        ["Vessel", "Quantity", "Fill", "Scent"],
        ["Tin", 10, 100, "Fig"],
      ],
      recipes: [
        ["Scent", "Ingredient", "Share", "Basis", "Kind"],
        ...rows.map(([share, basis, kind = null], i): CellValue[] => ["Fig", `I ${i}`, share, basis, kind]),
      ],
    });
  const odd = (percents: string) =>
    `check: Fig: the parts of its wax come to ${percents} %; is one missing? They are taken as the whole wax`;

  it("are asked about where they look like percentages and do not come to a whole", () => {
    expect(said([0.7, "part"], [0.25, "part"], [0.06, "of wax"])).toEqual([odd("95")]);
    expect(said([70, "part"], [25, "part"], [0.06, "of wax"])).toEqual([odd("95")]);
    expect(said([0.7, "part"], [0.3, "part"], [0.06, "of wax"])).toEqual([]);
    // With a load of the total they are the whole.
    expect(said([0.7, "part"], [0.22, "part"], [0.08, "of total"])).toEqual([]);
    expect(said([2, "part"], [1, "part"], [0.06, "of wax"])).toEqual([]);
    expect(said([0.92, "part"], [0.08, "of wax"])).toEqual([]);
  });

  it("are loads of the total alone where the basis of its waxes is not part, and that is what is said", () => {
    const all = said([0.7, "of total", "wax"], [0.22, "of total", "wax"], [0.08, "of total", "scent"]);
    expect(all).toEqual([
      'fix: Fig: all shares are loads; give each wax the basis "part", its share may stay as it is',
    ]);
    expect(said([0.06, "of wax"])[0]).toContain("no wax in the recipe");
  });
});

describe("the loss", () => {
  it("is asked about where it is more than pots keep", () => {
    const pour: CellValue[][] = [
      ["Vessel", "Quantity", "Fill"],
      ["Tin", 2, 106],
    ];
    const loss = (loss: number) => texts({ pour }, { load: 0, loss });
    expect(loss(0.3)).toEqual([
      "check: Extra to melt (loss) is 30 %, more than pots and jugs keep as a rule; check it under Settings",
    ]);
    for (const one of [0, 0.03, 0.1, 0.2]) expect(loss(one)).toEqual([]);
  });
});
