import type { Sheet } from "../../sheet/sheet";
import { FORMATS } from "../formats";
import { heading, table, type Value } from "../layout";

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
    ],
    [
      ["Tea-light cup", "Cotton wick 2", 1],
      ...withLabel("Votive glass", "Cotton wick 3"),
      ...withLabel("Espresso cup", "Cotton wick 3"),
      ...withLabel("Small tin", "Cotton wick 3"),
      ...withLabel("Hexagon jar", "Cotton wick 5"),
      ["Hexagon jar", "Hexagon jar lid", 1],
      ...withLabel("Medium tin", "Cotton wick 4"),
      ...withLabel("Straight tumbler", "Cotton wick 6"),
      ["Straight tumbler", "Tumbler lid", 1],
      ...withLabel("Tapered glass", "Cotton wick 6"),
      ...withLabel("Stoneware mug", "Cotton wick 6"),
      ...withLabel("Tall tumbler", "Cotton wick 7"),
      ["Tall tumbler", "Tumbler lid", 1],
      ...withLabel("Square glass", "Cotton wick 7"),
      ...withLabel("Footed bowl", "Cotton wick 4", 2),
      ...withLabel("Dough bowl", "Cotton wick 5", 2),
      ...withLabel("Wide bowl", "Cotton wick 5", 3),
      [],
      [],
    ],
  );
  return {
    name: "Components",
    widths: [24, 24, 10, 20],
    cells: [
      ...heading(
        "Components",
        "What goes with each vessel and is counted: wicks, lid, label. A row for each; Each is how many of it one candle takes.",
        4,
      ),
      ...list.cells,
    ],
    tables: [list.table],
    frozenRows: 4,
    print: { paper: "a4", repeatRows: [3, 3] },
  };
}
