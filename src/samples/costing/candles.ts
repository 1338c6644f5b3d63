import type { Sheet } from "../../sheet/sheet";
import { FORMATS } from "../formats";
import { cell, heading, lookUp, table, thisRow } from "../layout";
import { PRODUCTS } from "./products";
import { REJECTS } from "./range";
import { ofCandle, UNIT_PRICES, UNIT_PRICES_THEN, WEIGHTS } from "./weights";

const own = thisRow("Candles");
const right = { align: "right" } as const;
const money = { format: FORMATS.money, ...right };

const HEADING = 4;

/** No cost where an ingredient is missing: it would be too low. */
function costWith(unitPrices: string): string {
  const weights = ofCandle(own("Candle"));
  return `=IF(ABS(SUM(${weights})-${own("Fill (g)")})>0.01,NA(),POUR.CANDLECOST(${weights},${unitPrices},${own("Components")},${own("Labour")},${REJECTS}))`;
}

const ofVessel = (column: string): string => `=${lookUp("VesselCosts", column, "Vessel", own("Vessel"))}`;

/** The candles: what each candle is made of and in, how many to make, and what one of it costs. */
export function candles(): Sheet {
  const list = table(
    "Candles",
    HEADING,
    0,
    [
      { heading: "Candle", look: "input" },
      { heading: "Scent", look: "input", choices: ["Recipes", "Scent"] },
      { heading: "Vessel", look: "input", choices: ["VesselCosts", "Vessel"] },
      { heading: "To make", look: "input", format: FORMATS.count, ...right },
      { heading: "Fill (g)", formula: ofVessel("Fill (g)"), format: FORMATS.scale, ...right },
      { heading: "Components", formula: ofVessel("Components"), ...money },
      { heading: "Labour", formula: ofVessel("Labour"), ...money },
      { heading: "Cost", formula: costWith(UNIT_PRICES), ...money },
      { heading: "Cost with dearer wax", formula: costWith(UNIT_PRICES_THEN), ...money },
    ],
    PRODUCTS.map(({ candle, scent, vessel, toMake }) => [candle, scent, vessel, toMake]),
  );
  const unclear = `IF(ABS(SUM(${WEIGHTS})-SUM(Candles[Fill (g)]))>0.01,"Check the candles: the weights of one do not add up to its fill. It has no row on the sheet Weights, its scent has no recipe, an ingredient has no column, or the rows of a recipe do not stand together.","")`;
  return {
    name: "Candles",
    widths: [31, 19, 18, 10, 10, 11, 11, 11, 12],
    cells: [
      ...heading(
        "Candles",
        "The candles to make, and what one good candle of each costs: its weights on the sheet Weights, its components and its labour, the rejects paid for.",
        9,
      ),
      cell(2, 0, { formula: `=${unclear}` }, { look: "alert", across: 9 }),
      ...list.cells,
    ],
    tables: [list.table],
    frozenRows: HEADING + 1,
    print: { paper: "a4", landscape: true, repeatRows: [HEADING, HEADING] },
  };
}
