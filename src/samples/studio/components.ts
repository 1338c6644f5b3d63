import type { Sheet } from "../../sheet/sheet";
import { FORMATS } from "../formats";
import { heading, table, thisRow, unlessBlank, type Value } from "../layout";
import { costOf } from "./prices";
import { firstRow, isUnknown, slipLine } from "./slips";

const own = thisRow("Components");
/** What one candle pays for it; what keeps that from being known stands in its place. */
const COST = unlessBlank(
  `${own("Vessel")}&${own("Item")}`,
  `IF(LEN(${own("Item")})=0,"which item?",IF(COUNTIF(${own("Each")},">0")=0,${own("Item")}&": how many?",${costOf(own("Item"), own("Each"))}))`,
);
const IS_LOST = `(LEN(Components[Vessel]&Components[Item]&Components[Each])>0)*${isUnknown("Components[Vessel]", "Vessels", "Vessel")}`;

const withLabel = (vessel: string, wick: string, wicks = 1): Value[][] => [
  [vessel, wick, wicks],
  [vessel, "Safety label", 1],
];

/** What goes with each vessel and is counted. The last rows are free. */
export function components(): Sheet {
  const list = table(
    "Components",
    3,
    0,
    [
      { heading: "Vessel", look: "input", choices: ["Vessels", "Vessel"] },
      { heading: "Item", look: "input", choices: ["Items", "Item"] },
      { heading: "Each", look: "input", format: FORMATS.count, align: "right" },
      { heading: "Cost", formula: COST, format: FORMATS.money, align: "right" },
    ],
    [
      ["Tea-light cup", "Wick, cotton 2", 1],
      ...withLabel("Votive glass", "Wick, cotton 3"),
      ...withLabel("Espresso cup", "Wick, cotton 3"),
      ...withLabel("Small tin", "Wick, cotton 3"),
      ...withLabel("Hexagon jar", "Wick, cotton 5"),
      ["Hexagon jar", "Hexagon jar lid", 1],
      ...withLabel("Medium tin", "Wick, cotton 4"),
      ...withLabel("Straight tumbler", "Wick, cotton 6"),
      ["Straight tumbler", "Tumbler lid", 1],
      ...withLabel("Tapered glass", "Wick, cotton 6"),
      ...withLabel("Stoneware mug", "Wick, cotton 6"),
      ...withLabel("Tall tumbler", "Wick, cotton 7"),
      ["Tall tumbler", "Tumbler lid", 1],
      ...withLabel("Square glass", "Wick, cotton 7"),
      ...withLabel("Footed bowl", "Wick, cotton 4", 2),
      ...withLabel("Dough bowl", "Wick, cotton 5", 2),
      ...withLabel("Wide bowl", "Wick, cotton 5", 3),
      [],
      [],
    ],
  );
  return {
    name: "Components",
    widths: [24, 24, 10, 12],
    cells: [
      ...heading(
        "Components",
        "What goes with each vessel and is counted: wicks, lid, label. A row for each; Each is how many of it one candle takes. Its cost follows from the sheet Items.",
        4,
      ),
      slipLine(
        firstRow("Components", "Vessel", IS_LOST, "no such vessel on the sheet Vessels, so no candle pays for it."),
        4,
      ),
      ...list.cells,
    ],
    tables: [list.table],
    frozenRows: 4,
    print: { paper: "a4", repeatRows: [3, 3] },
  };
}
