import { describe, expect, it } from "vitest";
import { buildRun } from "../../../src/runsheet/buildRun";
import { FIRST_SETTINGS } from "../../../src/runsheet/settings";
import { matchColumns, type TableTypeId } from "../../../src/runsheet/tables/registry";
import type { Tables } from "../../../src/runsheet/tables/tableRows";
import type { CellValue } from "../../../src/sheet/sheet";

const HEADINGS = {
  pour: ["Vessel", "Quantity", "Fill weight", "Scent", "Load", "Wax"],
  recipes: ["Scent", "Ingredient", "Share", "Basis", "Kind"],
  items: ["Item", "Kind", "On hand"],
} satisfies Partial<Record<TableTypeId, string[]>>;
type Rows = Partial<Record<keyof typeof HEADINGS, CellValue[][]>>;

/** A blend of two waxes and a little hardener, as a recipe of its own; all invented. */
const BLEND: CellValue[][] = [
  ["Blend", "Soft wax", 3, "part", "wax"],
  ["Blend", "Hard wax", 1, "part", "wax"],
  ["Blend", "Hardener", 0.02, "of wax", "other"],
];

/** Ten tins of 106 g: 100 of wax and 6 of scent each. */
function run({ pour = [["Tin", 10, 106, "Cedar", 0.06, "Blend"]], ...rows }: Rows) {
  const tables = Object.entries({ pour, ...rows }).map(([type, rows]) => {
    const headings = HEADINGS[type as keyof typeof HEADINGS];
    return [type, { type, headings, rows, columns: matchColumns(type as TableTypeId, headings) }];
  });
  return buildRun(Object.fromEntries(tables) as Tables, { ...FIRST_SETTINGS, loss: 0 });
}
const saidOfWax = (made: ReturnType<typeof run>) =>
  made.problems.flatMap(({ field, severity, row, text }) => (field === "wax" ? [`${severity} ${row}: ${text}`] : []));

describe("the wax that a row names", () => {
  it("is melted as its recipe says, with what the recipe adds, and the row's own scent", () => {
    const made = run({ recipes: BLEND });
    expect(saidOfWax(made)).toEqual([]);
    const [scent] = made.plan.scents;
    expect(scent?.ingredients.map(({ name }) => name)).toEqual(["Soft wax", "Hard wax", "Hardener", "Cedar"]);
    // By hand: 1060 g are 108 hundredths of the wax, 981.5: three quarters and one quarter, 2 % and 6 % of it.
    expect(scent?.pots[0]?.weights.map((weight) => Math.round(weight))).toEqual([736, 245, 20, 59]);
  });

  it("gives of a recipe with scent only the wax, and that is said", () => {
    const scented: CellValue[][] = [...BLEND, ["Blend", "Fig oil", 0.08, "of wax", "scent"]];
    const made = run({ recipes: scented });
    expect(saidOfWax(made)).toEqual(["warning 0: Blend: of its recipe only the wax is taken here, and not Fig oil"]);
    expect(made.plan.scents[0]?.ingredients.map(({ name }) => name)).not.toContain("Fig oil");
  });

  it("has to be a wax: a recipe that holds none is refused, beside the first row that names it", () => {
    const recipes: CellValue[][] = [["Blend", "Fig oil", 0.08, "of wax", "scent"]];
    const pour: CellValue[][] = ["Cedar", "Moss"].map((scent) => ["Tin", 10, 106, scent, 0.06, "Blend"]);
    expect(saidOfWax(run({ recipes, pour }))).toEqual([
      "error 0: Blend: its recipe holds no wax; give it parts, or name another wax",
    ]);
    expect(run({ recipes }).problems.filter(({ severity }) => severity === "error")).toHaveLength(1);
    // What is wrong in the recipe itself is to be fixed first, and is the one thing said.
    const unread: CellValue[][] = [["Blend", "Soft wax", "three", "part", "wax"]];
    expect(saidOfWax(run({ recipes: unread }))).toEqual([]);
    expect(run({ recipes: unread }).problems.filter(({ severity }) => severity === "error")).toEqual([
      expect.objectContaining({ table: "recipes", row: 0, field: "share" }),
    ]);
  });

  it("is asked about where no recipe and no item knows it, and not where nothing is there to compare with", () => {
    const pour: CellValue[][] = [
      ["Tin", 10, 106, "Cedar", 0.06, "Sotf wax"],
      ["Tin", 10, 106, "Cedar", 0.06, "sotf  WAX"],
    ];
    const asked =
      "warning 0: Sotf wax is no recipe and no item that is known; it is melted as a wax of its own. Is it Soft wax?";
    expect(saidOfWax(run({ pour, recipes: BLEND }))).toEqual([asked]);
    expect(saidOfWax(run({ pour, items: [["Soft wax", "wax", 5000]] }))).toEqual([asked]);
    expect(saidOfWax(run({ pour }))).toEqual([]);
    const known = (wax: string, rows: Rows) =>
      saidOfWax(run({ pour: [["Tin", 10, 106, "Cedar", 0.06, wax]], ...rows }));
    expect(known("Soft wax", { recipes: BLEND })).toEqual([]);
    expect(known("Sotf wax", { items: [["Sotf wax", "wax", 5000]] })).toEqual([]);
    // Two that are as near are no help, nor is a name that is near to none; the blend itself may be meant.
    const two: CellValue[][] = [...BLEND, ["Other", "Soft wix", 1, "part", "wax"]];
    expect(known("Soft wux", { recipes: two })[0]).toMatch(/ of its own\. Check the name$/);
    expect(known("Coconut", { recipes: BLEND })[0]).toMatch(/ of its own\. Check the name$/);
    expect(known("Blent", { recipes: BLEND })[0]).toMatch(/ of its own\. Is it Blend\?$/);
    expect(known("Blent", { recipes: [["Blend", "Soft wax", "three", "part", "wax"]] })[0]).toMatch(/Is it Blend\?$/);
    // An additive of a recipe is no wax.
    expect(known("Hardener", { recipes: BLEND })).toHaveLength(1);
  });

  it("parts the pots of one scent", () => {
    const pour: CellValue[][] = [
      ["Tin", 1, 106, "Cedar", 0.06, ""],
      ["Tin", 1, 106, "Cedar", 0.06, "Soft wax"],
      ["Tin", 1, 106, "Cedar", 0.06, "soft wax"],
    ];
    expect(run({ pour }).plan.scents.map(({ wax, pots }) => [wax, pots.length])).toEqual([
      ["", 1],
      ["Soft wax", 1],
    ]);
  });
});

describe("rows that share a pot", () => {
  const pots = (...pour: CellValue[][]) => run({ pour }).plan.scents.map(({ pots }) => pots.length);
  const recipes: CellValue[][] = [
    ["Cedar", "Soft wax", 1, "part", "wax"],
    ["Cedar", "Cedar oil", 0.06, "of wax", "scent"],
  ];

  it("are those without scent, whatever they say of its basis, and those of a recipe, whatever load they name", () => {
    expect(pots(["Tin", 1, 100, "", 0, ""], ["Bowl", 1, 100, "", 0, ""])).toEqual([1]);
    const made = run({
      recipes,
      pour: [
        ["Tin", 1, 106, "Cedar", 0.06, ""],
        ["Tin", 1, 106, "cedar", 0.09, ""],
      ],
    });
    expect(made.plan.scents).toMatchObject([{ load: expect.closeTo(0.06, 12), pots: [{ wax: 200, scent: 12 }] }]);
  });

  it("are not those of another load or another scent", () => {
    expect(pots(["Tin", 1, 100, "Cedar", 0.06, ""], ["Tin", 1, 100, "Cedar", 0.07, ""])).toEqual([1, 1]);
    expect(pots(["Tin", 1, 100, "Cedar", 0.06, ""], ["Tin", 1, 100, "Moss", 0.06, ""])).toEqual([1, 1]);
  });
});
