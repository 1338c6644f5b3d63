import type { Sheet } from "../../sheet/sheet";
import { FORMATS } from "../formats";
import { type Column, cell, heading, headingRow, lookUp, setting, type Value } from "../layout";
import { ofIngredient } from "./weights";

const right = { align: "right" } as const;
const grams = { format: FORMATS.scale, ...right };
const money = { format: FORMATS.money, ...right };
const count = { format: FORMATS.count, ...right };

const COLUMNS: readonly Column[] = [
  { heading: "Ingredient", look: "input" },
  { heading: "Needed (g)", ...grams },
  { heading: "On hand (g)", look: "input", ...grams },
  { heading: "Missing (g)", ...grams },
  { heading: "first", ...grams },
  { heading: "second", look: "input", ...grams },
  { heading: "third", look: "input", ...grams },
  { heading: "first", ...money },
  { heading: "second", look: "input", ...money },
  { heading: "third", look: "input", ...money },
  { heading: "first", ...count },
  { heading: "second", ...count },
  { heading: "third", ...count },
  { heading: "Cost", ...money },
];

/** Ingredient, on hand, then what the second and the third pack hold and cost. */
const INGREDIENTS: readonly (readonly [string, number, number?, number?, number?, number?])[] = [
  ["Soy wax", 9000, 5000, 1000, 31, 8.2],
  ["Rapeseed wax", 2400, 5000, 1000, 36, 8.9],
  ["Coconut wax", 1500, 2500, 1000, 26, 11.5],
  ["Beeswax", 2000, 1000, 500, 19.5, 10.5],
  ["Lamplit quince", 220, 250, 100, 15.8, 7.2],
  ["Attic cedar", 60, 250, 100, 18.5, 8.6],
  ["Plum thunder", 90, 250, 100, 17, 7.8],
  ["Rain on slate", 400, 250, 100, 15, 7],
  ["Straw dye", 3, 20, undefined, 4.2],
];

const FIRST = 7;
const ofPrices = (column: string, name: string): string => lookUp("Ingredients", column, "Ingredient", name);

/** What the candles to make still need, and the packs that cover it at the least cost. */
export function toBuy(): Sheet {
  const rows = INGREDIENTS.map(([ingredient, onHand, second, third, secondPrice, thirdPrice], i) => {
    const at = FIRST + i + 1;
    const packs = `D${at},E${at}:G${at},H${at}:J${at}`;
    const values: Value[] = [
      ingredient,
      {
        formula: `=SUMPRODUCT(SUMIFS(Candles[To make],Candles[Candle],Weights[Candle]),${ofIngredient(`A${at}`)})*(1+$B$4)`,
      },
      onHand,
      { formula: `=ROUNDUP(MAX(0,B${at}-C${at}),0)` },
      { formula: `=${ofPrices("Pack in g", `A${at}`)}` },
      second ?? null,
      third ?? null,
      { formula: `=${ofPrices("Pack price", `A${at}`)}+${ofPrices("Delivery", `A${at}`)}` },
      secondPrice ?? null,
      thirdPrice ?? null,
      { formula: `=POUR.PACKPLAN(${packs})` },
      null,
      null,
      { formula: `=POUR.PACKCOST(${packs})` },
    ];
    return values.map((value, column) => {
      const { heading: _, ...show } = COLUMNS[column] as Column;
      return cell(FIRST + i, column, value, show);
    });
  });
  const last = FIRST + INGREDIENTS.length;
  const group = (column: number, text: string) =>
    cell(FIRST - 2, column, text, { look: "label", align: "center", across: 3 });
  return {
    name: "To buy",
    widths: [18, 13, 13, 13, 9, 9, 9, 9, 9, 9, 9, 9, 9, 10],
    cells: [
      ...heading(
        "To buy",
        "For all candles to make: what is missing, and the packs that cover it at the least cost, then with the least left over. The first pack and its price come from the sheet Prices; prices are with delivery.",
        14,
      ),
      ...setting(3, "Extra to melt (loss)", 0.03, "What stays in the pot and the jug.", 14, FORMATS.load),
      group(4, "A pack holds (g)"),
      group(7, "and costs"),
      group(10, "Packs to buy"),
      ...headingRow(FIRST - 1, 0, COLUMNS),
      ...rows.flat(),
      ...COLUMNS.map((_, column) => {
        const show = { look: "total", ...(column === 13 && money) } as const;
        if (column === 0) return cell(last, column, "Total", show);
        return cell(last, column, column === 13 ? { formula: `=SUM(N${FIRST + 1}:N${last})` } : null, show);
      }),
    ],
    print: { paper: "a4", landscape: true },
  };
}
