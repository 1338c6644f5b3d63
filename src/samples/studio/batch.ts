import type { Sheet } from "../../sheet/sheet";
import { FORMATS } from "../formats";
import { cell, heading, lookUp, table, thisRow, unlessBlank } from "../layout";
import { firstRow, slipLine } from "./slips";

const own = thisRow("Batch");

/** What another table says of the vessel or scent in this row; nothing where the row is free. */
const of = (from: string, key: string, column: string): string =>
  unlessBlank(own(key), lookUp(from, column, key, own(key)));

const part = (name: string): string => `=POUR.${name}(${["Fill weight (g)", "Load", "Basis"].map(own).join(",")})`;

/** Blank where one candle's weight is blank; 0 is a weight. */
const times = (each: string): string => unlessBlank(own(each), `${own("Quantity")}*${own(each)}`);

const weight = { format: FORMATS.weight, align: "right" } as const;

/** What the totals and the pots pass over: half a row. */
const HALF = `(LEN(Batch[Vessel]&Batch[Scent]&Batch[Quantity])>0)*(LEN(Batch[Vessel])*LEN(Batch[Scent])*LEN(Batch[Quantity])=0)`;

/** The candles of the day. The last rows are free. */
export function batch(): Sheet {
  const list = table(
    "Batch",
    4,
    0,
    [
      { heading: "Vessel", look: "input", choices: ["Vessels", "Vessel"] },
      { heading: "Scent", look: "input", choices: ["Scents", "Scent"] },
      { heading: "Quantity", look: "input", format: FORMATS.count, align: "right" },
      { heading: "Fill weight (g)", formula: of("Vessels", "Vessel", "Fill weight (g)"), ...weight },
      { heading: "Load", formula: of("Scents", "Scent", "Load (%)"), format: FORMATS.load, align: "right" },
      { heading: "Basis", formula: of("Scents", "Scent", "Basis (of wax or of total)"), align: "center" },
      { heading: "Wax each (g)", formula: part("WAXPART"), ...weight },
      { heading: "Scent each (g)", formula: part("SCENTPART"), ...weight },
      { heading: "Wax total (g)", formula: times("Wax each (g)"), ...weight },
      { heading: "Scent total (g)", formula: times("Scent each (g)"), ...weight },
    ],
    [
      ["Straight tumbler", "Lamplit quince", 12],
      ["Medium tin", "Lamplit quince", 10],
      ["Wide bowl", "Lamplit quince", 3],
      ["Tapered glass", "Attic cedar", 8],
      ["Square glass", "Attic cedar", 6],
      ["Small tin", "Attic cedar", 12],
      ["Hexagon jar", "Plum thunder", 9],
      ["Footed bowl", "Plum thunder", 4],
      ["Tall tumbler", "Rain on slate", 6],
      ["Stoneware mug", "Rain on slate", 5],
      ["Tea-light cup", "Bare, no scent", 20],
      [],
      [],
    ],
  );
  const total = (column: number, of: string, format: string) =>
    cell(3, column, { formula: `=SUM(Batch[${of}])` }, { look: "total", format, align: "right" });
  return {
    name: "Batch",
    widths: [20, 18, 10, 12, 8, 10, 13, 13, 14, 14],
    cells: [
      ...heading(
        "Batch",
        "One row for each vessel and scent (fragrance oil). Fill weight, load and basis come from the sheets Vessels and Scents; the run sheet is built from this table.",
        10,
      ),
      slipLine(firstRow("Batch", "Vessel", HALF, "vessel, scent or quantity is missing."), 10),
      cell(3, 0, "Total", { look: "total" }),
      ...[1, 3, 4, 5, 6, 7].map((column) => cell(3, column, null, { look: "total" })),
      total(2, "Quantity", FORMATS.count),
      total(8, "Wax total (g)", FORMATS.weight),
      total(9, "Scent total (g)", FORMATS.weight),
      ...list.cells,
    ],
    tables: [list.table],
    frozenRows: 5,
    print: { paper: "a4", landscape: true, repeatRows: [4, 4] },
  };
}
