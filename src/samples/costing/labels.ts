import type { Sheet } from "../../sheet/sheet";
import { FORMATS } from "../formats";
import { day, heading, lookUp, setting, table, thisRow } from "../layout";
import { PRODUCTS } from "./products";

const own = thisRow("Labels");
const vessel = lookUp("Candles", "Vessel", "Candle", own("Candle"));

/** Which run of the day each scent is poured in. */
const RUNS: Readonly<Record<string, number>> = {
  "Lamplit quince": 1,
  "Attic cedar": 2,
  "Plum thunder": 3,
  "Rain on slate": 4,
  "Quince and cedar": 5,
  Bare: 6,
};

/** Net weight and lot code for every candle's label. */
export function labels(): Sheet {
  const list = table(
    "Labels",
    6,
    0,
    [
      { heading: "Candle", look: "input", choices: ["Candles", "Candle"] },
      {
        heading: "Fill (g)",
        formula: `=${lookUp("VesselCosts", "Fill (g)", "Vessel", vessel)}`,
        format: FORMATS.scale,
        align: "center",
      },
      { heading: "Ounces and grams", formula: `=POUR.NETLABEL(${own("Fill (g)")},"g")`, align: "center" },
      { heading: "Metric", formula: `=POUR.NETLABEL(${own("Fill (g)")},"g","metric")`, align: "center" },
      { heading: "Run", look: "input", format: FORMATS.count, align: "center" },
      { heading: "Lot", formula: `=POUR.LOTCODE($B$4,${own("Run")},$B$5)`, align: "center" },
    ],
    PRODUCTS.map(({ candle, scent }) => [candle, RUNS[scent] ?? null]),
  );
  return {
    name: "Labels",
    widths: [31, 12, 28, 12, 8, 20],
    cells: [
      ...heading(
        "Labels",
        "Net weights are rounded down in each unit, so that no label says more than there is. What else a label must say differs from place to place.",
        6,
      ),
      ...setting(3, "Poured on", day(2026, 11, 26), "The day of the lot.", 6, FORMATS.date),
      ...setting(4, "Prefix", "OST", "Put in front of every lot.", 6),
      ...list.cells,
    ],
    tables: [list.table],
    print: { paper: "a4", landscape: true, repeatRows: [6, 6] },
  };
}
