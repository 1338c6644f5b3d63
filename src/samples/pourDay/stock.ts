import type { Sheet } from "../../sheet/sheet";
import { FORMATS } from "../formats";
import { heading, table } from "../layout";

const right = { align: "right" } as const;
const amount = { look: "input", ...right } as const;

/** What is on the shelf for the day, all but one thing enough, and the packs it is sold in. The last rows are free. */
export function stock(): Sheet {
  const list = table(
    "Stock",
    3,
    0,
    [
      { heading: "Item", look: "input" },
      { heading: "On hand (g)", ...amount },
      { heading: "Pack size (g)", ...amount },
      { heading: "Pack price", look: "input", format: FORMATS.money, ...right },
    ],
    [
      ["Wax", 14_000, 20_000, 112],
      ["Soy wax", 6000, 10_000, 54],
      ["Rapeseed wax", 2500, 5000, 34.5],
      ["Cedar oil", 150, 50, 5.2],
      ["Cedar oil", null, 100, 8.9],
      ["Cedar oil", null, 250, 19.5],
      ["Old paper oil", 140, 100, 9.6],
      ["Colour block, cedar", 200, 500, 21],
      ["Lamplit quince", 480, 250, 12.6],
      ["Plum thunder", 320, 250, 14],
      ["Rain on slate", 210, 250, 13.5],
      ["Tea-light cup", 100, 100, 18],
      ["Small tin", 26, 48, 33.6],
      ["Hexagon jar", 14, 24, 36],
      ["Medium tin", 21, 48, 49.2],
      ["Straight tumbler", 36, 12, 25.8],
      ["Tapered glass", 9, 12, 28.8],
      ["Stoneware mug", 6, 6, 28.8],
      ["Tall tumbler", 11, 12, 33.6],
      ["Square glass", 8, 12, 35.4],
      ["Footed bowl", 5, 6, 31.2],
      ["Wide bowl", 4, 6, 46.2],
      [],
      [],
    ],
  );
  return {
    name: "Stock",
    widths: [26, 16, 16, 16],
    cells: [
      ...heading(
        "Stock",
        "What is on hand, and the packs it is sold in: waxes and scents (fragrance oils) in grams, vessels by the piece. A second size of pack has a row of its own. Wax is what goes into every scent that has no recipe. The run sheet says what is missing and which packs to buy.",
        4,
      ),
      ...list.cells,
    ],
    tables: [list.table],
    frozenRows: 4,
    print: { paper: "a4", repeatRows: [3, 3] },
  };
}
