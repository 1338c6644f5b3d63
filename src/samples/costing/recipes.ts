import type { Sheet } from "../../sheet/sheet";
import { FORMATS } from "../formats";
import { cell, heading, headingRow, table, type Value } from "../layout";

type Ingredient = readonly [name: string, share: number, basis: "part" | "of wax" | "of total"];

const RECIPES: Readonly<Record<string, readonly Ingredient[]>> = {
  "Lamplit quince": [
    ["Soy wax", 3, "part"],
    ["Rapeseed wax", 1, "part"],
    ["Lamplit quince", 0.06, "of wax"],
    ["Straw dye", 0.002, "of total"],
  ],
  "Attic cedar": [
    ["Soy wax", 4, "part"],
    ["Coconut wax", 1, "part"],
    ["Attic cedar", 0.08, "of wax"],
  ],
  "Plum thunder": [
    ["Soy wax", 2, "part"],
    ["Rapeseed wax", 1, "part"],
    ["Coconut wax", 1, "part"],
    ["Plum thunder", 0.07, "of total"],
  ],
  "Rain on slate": [
    ["Soy wax", 9, "part"],
    ["Beeswax", 1, "part"],
    ["Rain on slate", 0.05, "of wax"],
  ],
  "Quince and cedar": [
    ["Soy wax", 3, "part"],
    ["Rapeseed wax", 1, "part"],
    ["Coconut wax", 1, "part"],
    ["Lamplit quince", 0.04, "of wax"],
    ["Attic cedar", 0.03, "of wax"],
    ["Straw dye", 0.001, "of total"],
  ],
  Bare: [
    ["Soy wax", 4, "part"],
    ["Beeswax", 1, "part"],
  ],
};

const kindOf = (name: string, basis: Ingredient[2]): string => {
  if (basis === "part") return "wax";
  return name.endsWith("dye") ? "dye" : "scent";
};

const HEADING = 3;
const FREE = 6;
const ROWS = Object.values(RECIPES).flat().length + FREE;

/** For other sheets: the weights beside the table, as many as it has rows. */
export const WEIGHT = `Recipes!$F$${HEADING + 2}:$F$${HEADING + 1 + ROWS}`;

/** What goes into each recipe, several waxes and scents in some, and so into a hundred grams of it. */
export function recipes(): Sheet {
  const weight = { align: "right", format: "0.00" } as const;
  const rows: Value[][] = [];
  const splits: Value[] = [];
  for (const [scent, ingredients] of Object.entries(RECIPES)) {
    const range = (letter: string): string =>
      `${letter}${HEADING + 2 + rows.length}:${letter}${HEADING + 1 + rows.length + ingredients.length}`;
    splits[rows.length] = { formula: `=POUR.RECIPESPLIT(100,${range("C")},${range("D")})` };
    for (const [name, share, basis] of ingredients) {
      rows.push([
        scent,
        name,
        basis === "part" ? share : { number: share, format: FORMATS.load },
        basis,
        kindOf(name, basis),
      ]);
    }
  }
  const list = table(
    "Recipes",
    HEADING,
    0,
    [
      { heading: "Scent", look: "input" },
      { heading: "Ingredient", look: "input" },
      { heading: "Share", look: "input", align: "right" },
      { heading: "Basis", look: "input", align: "center" },
      { heading: "Kind", look: "input", align: "center" },
    ],
    [...rows, ...Array.from({ length: FREE }, () => [])],
  );
  return {
    name: "Recipes",
    widths: [20, 20, 10, 12, 10, 12],
    cells: [
      ...heading(
        "Recipes",
        "Parts divide the wax among the waxes, in any sum; the others are loads, of wax or of total. Kind says what counts as scent (fragrance oil). Beside the table each recipe is worked out for a hundred grams.",
        6,
      ),
      ...list.cells,
      ...headingRow(HEADING, 5, [{ heading: "In 100 g", align: "right" }]),
      ...Array.from({ length: ROWS }, (_, i) => cell(HEADING + 1 + i, 5, splits[i] ?? null, weight)),
    ],
    tables: [list.table],
    frozenRows: HEADING + 1,
    print: { paper: "a4", repeatRows: [HEADING, HEADING] },
  };
}
