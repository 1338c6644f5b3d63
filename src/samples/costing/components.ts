import type { Sheet } from "../../sheet/sheet";
import { FORMATS } from "../formats";
import { heading, table, thisRow, unlessBlank } from "../layout";

const own = thisRow("ComponentPrices");
const right = { align: "right" } as const;
const money = { look: "input", format: FORMATS.money, ...right } as const;

/** What is bought by the piece: vessels, wicks, lids, labels. The last row is free. */
export function components(): Sheet {
  const list = table(
    "ComponentPrices",
    3,
    0,
    [
      { heading: "Component", look: "input" },
      { heading: "Pack price", ...money },
      { heading: "Pieces", look: "input", format: FORMATS.count, ...right },
      { heading: "Delivery", ...money },
      {
        heading: "Each",
        formula: unlessBlank(own("Component"), `(${own("Pack price")}+${own("Delivery")})/${own("Pieces")}`),
        format: FORMATS.unitPrice,
        ...right,
      },
    ],
    [
      ["Votive glass", 18, 24, 4.8],
      ["Small tin", 28.8, 48, 4.8],
      ["Medium tin", 43.2, 48, 6],
      ["Hexagon jar", 30, 24, 6],
      ["Straight tumbler", 21, 12, 4.8],
      ["Tall tumbler", 27.6, 12, 6],
      ["Footed bowl", 25.8, 6, 5.4],
      ["Wide bowl", 39, 6, 7.2],
      ["Wick, small", 9, 200, 2],
      ["Wick, medium", 11, 200, 2],
      ["Wick, large", 14, 200, 2],
      ["Lid, wooden", 33.6, 48, 4.8],
      ["Label", 36, 500],
      [],
    ],
  );
  return {
    name: "Components",
    widths: [22, 12, 10, 12, 12],
    cells: [
      ...heading("Components", "Vessels, wicks, lids and labels: what is bought by the piece, delivery shared out.", 5),
      ...list.cells,
    ],
    tables: [list.table],
    frozenRows: 4,
    print: { paper: "a4", repeatRows: [3, 3] },
  };
}
