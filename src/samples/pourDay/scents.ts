import type { Sheet } from "../../sheet/sheet";
import { FORMATS } from "../formats";
import { heading, table, thisRow } from "../layout";

const own = thisRow("Scents");
const rate = { look: "input", format: FORMATS.load, align: "center" } as const;

const CHECKED = ["Load (%)", "Wax maximum (%)", "Product limit (%)", "Basis (of wax or of total)"];

/** The scents with their loads, each within the limits of its own (invented) papers; the last row is free. */
export function scents(): Sheet {
  const list = table(
    "Scents",
    3,
    0,
    [
      { heading: "Scent", look: "input" },
      { heading: "Load (%)", ...rate },
      { heading: "Basis (of wax or of total)", look: "input", align: "center" },
      { heading: "Wax maximum (%)", ...rate },
      { heading: "Product limit (%)", ...rate },
      {
        heading: "Check",
        formula: `=POUR.LOADCHECK(${CHECKED.map(own).join(",")})`,
        look: "alert",
      },
    ],
    [
      ["Lamplit quince", 0.06, "of wax", 0.1, 0.09],
      ["Attic cedar", 0.08, "of wax", 0.1, 0.08],
      ["Plum thunder", 0.07, "of total", 0.1, 0.085],
      ["Rain on slate", 0.05, "of wax", 0.1, 0.06],
      ["Bare, no scent", 0, "of wax"],
      [],
    ],
  );
  return {
    name: "Scents",
    widths: [22, 11, 17, 15, 15, 44],
    cells: [
      ...heading(
        "Scents",
        "The load is a share of the wax or of the total, as its basis says. The wax maximum is of wax, the product limit of total; Check stays empty while both are kept.",
        6,
      ),
      ...list.cells,
    ],
    tables: [list.table],
    frozenRows: 4,
    print: { paper: "a4", landscape: true, repeatRows: [3, 3] },
  };
}
