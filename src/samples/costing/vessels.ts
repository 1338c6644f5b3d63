import type { Sheet } from "../../sheet/sheet";
import { FORMATS } from "../formats";
import { heading, lookUp, setting, table, thisRow } from "../layout";

const own = thisRow("VesselCosts");
const right = { align: "right" } as const;
const money = { format: FORMATS.money, ...right };
const each = (name: string): string => lookUp("ComponentPrices", "Each", "Component", name);

/** What a candle in each vessel takes besides wax and scent: its components and its work. */
export function vessels(): Sheet {
  const list = table(
    "VesselCosts",
    6,
    0,
    [
      { heading: "Vessel", look: "input" },
      { heading: "Fill (g)", look: "input", format: FORMATS.scale, align: "center" },
      { heading: "Wick", look: "input" },
      { heading: "Wicks", look: "input", format: FORMATS.count, align: "center" },
      { heading: "Lid", look: "input" },
      { heading: "Minutes", look: "input", format: FORMATS.count, ...right },
      {
        heading: "Components",
        formula: `=${each(own("Vessel"))}+${own("Wicks")}*${each(own("Wick"))}+IF(LEN(${own("Lid")})=0,0,${each(own("Lid"))})+${each("$B$4")}`,
        ...money,
      },
      { heading: "Labour", formula: `=${own("Minutes")}/60*$B$5`, ...money },
    ],
    [
      ["Votive glass", 58, "Wick, small", 1, null, 3],
      ["Small tin", 99, "Wick, small", 1, null, 4],
      ["Medium tin", 175, "Wick, medium", 1, null, 4],
      ["Hexagon jar", 147, "Wick, medium", 1, "Lid, wooden", 5],
      ["Straight tumbler", 216, "Wick, large", 1, "Lid, wooden", 5],
      ["Tall tumbler", 271, "Wick, large", 1, "Lid, wooden", 6],
      ["Footed bowl", 349, "Wick, medium", 2, null, 8],
      ["Wide bowl", 631, "Wick, medium", 3, null, 10],
    ],
  );
  return {
    name: "Vessels",
    widths: [20, 12, 15, 9, 15, 11, 12, 10],
    cells: [
      ...heading(
        "Vessels",
        "The fill is wax and scent (fragrance oil) together. Names of vessels, wicks and lids are those of the sheet Components.",
        8,
      ),
      ...setting(3, "On every candle", "Label", "A name from the sheet Components.", 8),
      ...setting(4, "Labour, one hour", 15, "Minutes are for one candle, shared out over a batch.", 8, FORMATS.money),
      ...list.cells,
    ],
    tables: [list.table],
    print: { paper: "a4", landscape: true, repeatRows: [6, 6] },
  };
}
