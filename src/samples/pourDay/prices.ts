import type { Sheet } from "../../sheet/sheet";
import { FORMATS } from "../formats";
import { heading, table } from "../layout";

/** What each ingredient and vessel of the day costs. The last rows are free. */
export function prices(): Sheet {
  const list = table(
    "Prices",
    3,
    0,
    [
      { heading: "Item", look: "input" },
      { heading: "Price (per kg)", look: "input", format: FORMATS.money, align: "right" },
    ],
    [
      ["Wax", 5.6],
      ["Soy wax", 5.4],
      ["Rapeseed wax", 6.9],
      ["Cedar oil", 89],
      ["Old paper oil", 96],
      ["Colour block, cedar", 42],
      ["Lamplit quince", 50.4],
      ["Plum thunder", 56],
      ["Rain on slate", 54],
      ["Tea-light cup", 0.18],
      ["Small tin", 0.7],
      ["Hexagon jar", 1.5],
      ["Medium tin", 1.03],
      ["Straight tumbler", 2.15],
      ["Tapered glass", 2.4],
      ["Stoneware mug", 4.8],
      ["Tall tumbler", 2.8],
      ["Square glass", 2.95],
      ["Footed bowl", 5.2],
      ["Wide bowl", 7.7],
      [],
      [],
    ],
  );
  return {
    name: "Prices",
    widths: [26, 18, 30],
    cells: [
      ...heading(
        "Prices",
        "Waxes and scents (fragrance oils) by the kilogram, vessels by the piece, in any one currency. The run sheet adds up what the materials of each candle cost, and of the whole day.",
        3,
      ),
      ...list.cells,
    ],
    tables: [list.table],
    frozenRows: 4,
    print: { paper: "a4", repeatRows: [3, 3] },
  };
}
