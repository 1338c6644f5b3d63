import type { Sheet } from "../../sheet/sheet";
import { FORMATS } from "../formats";
import { heading, table, thisRow, unlessBlank } from "../layout";
import { firstLack, priceOf } from "./prices";

const own = thisRow("Vessels");
const vessel = own("Vessel");

const SUM = `IF(COUNTIF(Components[Vessel],${vessel})=0,"no components",IFERROR(${priceOf(vessel)}+SUMIFS(Components[Cost],Components[Vessel],${vessel}),${vessel}&": no price"))`;
const COST = unlessBlank(
  vessel,
  `IF(N(${own("Fill weight (g)")})=0,"not weighed",IFNA(${firstLack("Components", "Cost", "Vessel", vessel)},${SUM}))`,
);

/** Every vessel with the water it holds to its fill line; one is not weighed yet and stays blank all along. */
export function vessels(): Sheet {
  const list = table(
    "Vessels",
    3,
    0,
    [
      { heading: "Vessel", look: "input" },
      { heading: "Shape", look: "input" },
      { heading: "Water weight (g)", look: "input", format: FORMATS.weight, align: "right" },
      { heading: "Wax factor", look: "input", format: FORMATS.factor, align: "right" },
      {
        heading: "Fill weight (g)",
        formula: `=POUR.FILLWEIGHT(${own("Water weight (g)")},${own("Wax factor")})`,
        format: FORMATS.weight,
        align: "right",
      },
      {
        heading: "Volume (ml)",
        formula: `=POUR.WATERVOLUME(${own("Water weight (g)")},"g")`,
        format: FORMATS.volume,
        align: "right",
      },
      { heading: "Wick", look: "input" },
      { heading: "Cost fitted", formula: COST, format: FORMATS.money, align: "right" },
    ],
    [
      ["Tea-light cup", "Round, low", 17.5, null, "Cotton 2"],
      ["Votive glass", "Round, tapered", 68, null, "Cotton 3"],
      ["Espresso cup", "Round, with a handle", 79.5, null, "Cotton 3"],
      ["Small tin", "Round, straight", 116, null, "Cotton 3"],
      ["Hexagon jar", "Six sides", 172, null, "Cotton 5"],
      ["Medium tin", "Round, straight", 204, null, "Cotton 4"],
      ["Straight tumbler", "Round, straight", 248, 0.872, "Cotton 6"],
      ["Tapered glass", "Round, wider at the rim", 266, 0.858, "Cotton 6"],
      ["Stoneware mug", "Round, with a handle", 287, null, "Cotton 6"],
      ["Tall tumbler", "Round, straight", 312, 0.869, "Cotton 7"],
      ["Square glass", "Square", 338, null, "Cotton 7"],
      ["Footed bowl", "Bowl", 405, 0.864, "2 x Cotton 4"],
      ["Dough bowl", "Long oval, two wicks", 560, null, "2 x Cotton 5"],
      ["Wide bowl", "Round, three wicks", 742, 0.851, "3 x Cotton 5"],
      ["Sample jar", "Not weighed yet"],
    ],
  );
  return {
    name: "Vessels",
    widths: [18, 24, 13, 11, 12, 12, 15, 22],
    cells: [
      ...heading(
        "Vessels",
        "Weigh the water that fills a vessel to its fill line. The wax factor (wax weight for one of water) turns it into the weight of wax and scent (fragrance oil) together; where it is blank 0.86 is taken, common practice. Wick: the one that your burn tests approved. The cost is that of the vessel fitted with its components, by the sheets Items and Components.",
        7,
      ),
      ...list.cells,
    ],
    tables: [list.table],
    frozenRows: 4,
    print: { paper: "a4", repeatRows: [3, 3] },
  };
}
