import { columnLetters } from "../../sheet/columnLetters";
import type { Sheet } from "../../sheet/sheet";
import { FORMATS } from "../formats";
import { type Column, cell, heading, lookUp, table, thisRow } from "../layout";
import { PRODUCTS } from "./products";
import { WEIGHT } from "./recipes";

const own = thisRow("Weights");
const right = { align: "right" } as const;

/** A column for each ingredient, from C on, each with the name it has on the sheet Prices. */
const INGREDIENTS = [
  "Soy wax",
  "Rapeseed wax",
  "Coconut wax",
  "Beeswax",
  "Lamplit quince",
  "Attic cedar",
  "Plum thunder",
  "Rain on slate",
  "Straw dye",
];
const FIRST = 2;
const HEADING = 5;
const letterOf = (ingredient: number): string => columnLetters(FIRST + ingredient);

/** The cells of a row (as the user counts) above the ingredients' columns: row 6 has their names, 4 and 5 their prices. */
const aboveAll = (row: number): string => `Weights!$${letterOf(0)}$${row}:$${letterOf(INGREDIENTS.length - 1)}$${row}`;

export const UNIT_PRICES = aboveAll(4);
export const UNIT_PRICES_THEN = aboveAll(5);

/** What all candles take of all ingredients. */
export const WEIGHTS = "Weights[[Soy wax]:[Straw dye]]";

/** For other sheets: what all candles take of an ingredient, and what one candle takes of all ingredients. */
export const ofIngredient = (name: string): string => `INDEX(${WEIGHTS},0,MATCH(${name},${aboveAll(HEADING + 1)},0))`;
export const ofCandle = (name: string): string => `INDEX(${WEIGHTS},MATCH(${name},Weights[Candle],0),0)`;

/** Of the fill, the share that this column's ingredient has in the recipe. */
function ingredientColumn(name: string, i: number): Column {
  const scent = lookUp("Candles", "Scent", "Candle", own("Candle"));
  const inHundred = `SUMIFS(${WEIGHT},Recipes[Scent],${scent},Recipes[Ingredient],${letterOf(i)}$${HEADING + 1})`;
  return { heading: name, formula: `=${own("Fill (g)")}/100*${inHundred}`, format: '#,##0.0;-#,##0.0;"–"', ...right };
}

/** What one of each candle takes of each ingredient. */
export function weights(): Sheet {
  const list = table(
    "Weights",
    HEADING,
    0,
    [
      { heading: "Candle", look: "input", choices: ["Candles", "Candle"] },
      {
        heading: "Fill (g)",
        formula: `=${lookUp("Candles", "Fill (g)", "Candle", own("Candle"))}`,
        format: FORMATS.scale,
        ...right,
      },
      ...INGREDIENTS.map(ingredientColumn),
    ],
    PRODUCTS.map(({ candle }) => [candle]),
  );
  const unitPriceRow = (row: number, label: string, column: string) => [
    cell(row, 0, label, { look: "label" }),
    ...INGREDIENTS.map((_, i) => {
      const formula = `=${lookUp("Ingredients", column, "Ingredient", `${letterOf(i)}$${HEADING + 1}`)}`;
      return cell(row, FIRST + i, { formula }, { format: FORMATS.unitPrice, ...right });
    }),
  ];
  return {
    name: "Weights",
    widths: [31, 10, ...INGREDIENTS.map(() => 15)],
    cells: [
      ...heading(
        "Weights",
        "What one of each candle takes, in grams: of the fill of its vessel what the recipe of its scent says.",
        11,
      ),
      ...unitPriceRow(3, "Price of a gram", "Price of a gram"),
      ...unitPriceRow(4, "Price with dearer wax", "With dearer wax"),
      ...list.cells,
    ],
    tables: [list.table],
    frozenRows: HEADING + 1,
    print: { paper: "a4", landscape: true, repeatRows: [3, HEADING] },
  };
}
