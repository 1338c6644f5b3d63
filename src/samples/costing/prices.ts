import type { Sheet } from "../../sheet/sheet";
import { FORMATS } from "../formats";
import { heading, table, thisRow } from "../layout";
import { DEARER } from "./range";

const own = thisRow("Ingredients");
const right = { align: "right" } as const;
const money = { look: "input", format: FORMATS.money, ...right } as const;
const unitPrice = { format: FORMATS.unitPrice, ...right };

/** Price of a gram when the pack costs this. */
const ofGram = (price: string): string =>
  `=POUR.UNITPRICE(${price},${own("Pack size")},${own("Unit")},"g",${own("Delivery")})`;

/** What each ingredient costs by the pack that is mostly bought, and so by the gram. */
export function prices(): Sheet {
  const list = table(
    "Ingredients",
    3,
    0,
    [
      { heading: "Ingredient", look: "input" },
      { heading: "Kind", look: "input", align: "center" },
      { heading: "Pack price", ...money },
      { heading: "Pack size", look: "input", ...right },
      { heading: "Unit", look: "input", align: "center" },
      { heading: "Delivery", ...money },
      {
        heading: "Pack in g",
        formula: `=${own("Pack size")}*POUR.UNITPRICE(1,1,"g",${own("Unit")})`,
        format: FORMATS.weight,
        ...right,
      },
      { heading: "Price of a gram", formula: ofGram(own("Pack price")), ...unitPrice },
      {
        heading: "With dearer wax",
        formula: ofGram(`${own("Pack price")}*IF(${own("Kind")}="wax",1+${DEARER},1)`),
        ...unitPrice,
      },
    ],
    [
      ["Soy wax", "wax", 92, 20, "kg", 11.5],
      ["Rapeseed wax", "wax", 58, 10, "kg", 8],
      ["Coconut wax", "wax", 61, 7.5, "kg", 7.5],
      ["Beeswax", "wax", 74, 10, "lb", 6.5],
      ["Lamplit quince", "scent", 46, 1, "kg", 4.5],
      ["Attic cedar", "scent", 27.5, 16, "oz", 4.5],
      ["Plum thunder", "scent", 52, 1, "kg", 4.5],
      ["Rain on slate", "scent", 24, 500, "g", 3],
      ["Straw dye", "dye", 13, 100, "g", 2],
    ],
  );
  return {
    name: "Prices",
    widths: [18, 9, 11, 10, 8, 11, 12, 11, 12],
    cells: [
      ...heading(
        "Prices of ingredients",
        "Each by the pack that is mostly bought, in its own unit, with the delivery that pack takes. Change the price of a wax: every candle follows.",
        9,
      ),
      ...list.cells,
    ],
    tables: [list.table],
    frozenRows: 4,
    print: { paper: "a4", repeatRows: [3, 3] },
  };
}
