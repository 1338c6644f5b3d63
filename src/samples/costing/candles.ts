import { columnLetters } from "../../sheet/columnLetters";
import type { Sheet } from "../../sheet/sheet";
import { FORMATS } from "../formats";
import { type Column, cell, heading, lookUp, table, thisRow } from "../layout";
import { REJECTS } from "./line";
import { PRODUCTS } from "./products";
import { WEIGHT } from "./recipes";

const own = thisRow("Candles");
const right = { align: "right" } as const;
const money = { format: FORMATS.money, ...right };

/** A column for each ingredient, from F on, each with the name it has on the sheet Prices. */
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
const FIRST_INGREDIENT = 5;
const HEADING = 5;

/** The name and the unit prices above each ingredient's weights: rows 6, 4 and 5 as the user counts. */
const INGREDIENT_NAMES = "$F$6:$N$6";
const UNIT_PRICES = "$F$4:$N$4";
const UNIT_PRICES_THEN = "$F$5:$N$5";

/** For other sheets: what all candles take of an ingredient. */
export const weightsOf = (ingredient: string): string =>
  `INDEX(Candles[[Soy wax]:[Straw dye]],0,MATCH(${ingredient},Candles!${INGREDIENT_NAMES},0))`;

const WEIGHTS = "Candles[[#This Row],[Soy wax]:[Straw dye]]";

/** Of the fill, the share that this column's ingredient has in the recipe. */
function ingredientColumn(name: string, i: number): Column {
  const heading = `${columnLetters(FIRST_INGREDIENT + i)}$${HEADING + 1}`;
  const inHundred = `SUMIFS(${WEIGHT},Recipes[Scent],${own("Scent")},Recipes[Ingredient],${heading})`;
  return { heading: name, formula: `=${own("Fill (g)")}/100*${inHundred}`, format: '#,##0.0;-#,##0.0;"–"', ...right };
}

/** No cost where an ingredient is missing: it would be too low. */
const costWith = (unitPrices: string): string =>
  `=IF(ABS(SUM(${WEIGHTS})-${own("Fill (g)")})>0.01,NA(),POUR.CANDLECOST(${WEIGHTS},${unitPrices},${own("Parts")},${own("Labour")},${REJECTS}))`;

const ofVessel = (column: string): string => `=${lookUp("Vessels", column, "Vessel", own("Vessel"))}`;

/** The product line: what each candle is made of, and what one of it costs. */
export function candles(): Sheet {
  const list = table(
    "Candles",
    HEADING,
    0,
    [
      { heading: "Candle", look: "input" },
      { heading: "Scent", look: "input" },
      { heading: "Vessel", look: "input" },
      { heading: "To make", look: "input", format: FORMATS.count, ...right },
      { heading: "Fill (g)", formula: ofVessel("Fill (g)"), format: FORMATS.scale, ...right },
      ...INGREDIENTS.map(ingredientColumn),
      { heading: "Parts", formula: ofVessel("Parts"), ...money },
      { heading: "Labour", formula: ofVessel("Labour"), ...money },
      { heading: "Cost", formula: costWith(UNIT_PRICES), ...money },
      { heading: "Cost then", formula: costWith(UNIT_PRICES_THEN), ...money },
    ],
    PRODUCTS.map(({ candle, scent, vessel, toMake }) => [candle, scent, vessel, toMake]),
  );
  const unitPriceRow = (row: number, label: string, column: string) => [
    cell(row, 0, label, { look: "label" }),
    ...INGREDIENTS.map((_, i) => {
      const at = FIRST_INGREDIENT + i;
      const name = `${columnLetters(at)}$${HEADING + 1}`;
      const formula = `=${lookUp("Prices", column, "Ingredient", name)}`;
      return cell(row, at, { formula }, { format: FORMATS.unitPrice, ...right });
    }),
  ];
  const complaint = `IF(ABS(SUM(Candles[[Soy wax]:[Straw dye]])-SUM(Candles[Fill (g)]))>0.01,"The weights of a candle do not add up to its fill: its scent has no recipe, an ingredient has no column, or the rows of a recipe do not stand together.","")`;
  return {
    name: "Candles",
    widths: [31, 19, 18, 9, 9, 10, 10, 10, 10, 10, 10, 10, 10, 10, 9, 9, 9, 9],
    cells: [
      ...heading(
        "Candles",
        "What one of each takes, in grams, by the recipe of its scent and the fill of its vessel; then what it costs, rejects paid for.",
        18,
      ),
      cell(2, 0, { formula: `=${complaint}` }, { look: "alert", across: 18 }),
      ...unitPriceRow(3, "Price of a gram", "Price of a gram"),
      ...unitPriceRow(4, "The same with dearer wax", "With dearer wax"),
      ...list.cells,
    ],
    tables: [list.table],
    frozenRows: 6,
    print: { paper: "a4", landscape: true, repeatRows: [5, 5] },
  };
}
