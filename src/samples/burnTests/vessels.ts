import type { Sheet } from "../../sheet/sheet";
import { FORMATS } from "../formats";
import { heading, table, thisRow, unlessBlank } from "../layout";
import { HEADING_LINES, VESSELS } from "./series";

const own = thisRow("Vessels");
const right = { align: "right" } as const;
const center = { align: "center" } as const;

/** The vessels on test with what fills them; a wick that is approved goes here. The last row is free. */
export function vessels(): Sheet {
  const list = table(
    "Vessels",
    3,
    0,
    [
      { heading: "Vessel", look: "input" },
      { heading: "Inside width (mm)", look: "input", format: FORMATS.count, ...center },
      { heading: "Water weight (g)", look: "input", format: FORMATS.weight, ...right },
      { heading: "Wax factor", look: "input", format: FORMATS.factor, ...right },
      {
        heading: "Fill weight (g)",
        formula: `=POUR.FILLWEIGHT(${own("Water weight (g)")},${own("Wax factor")})`,
        format: FORMATS.weight,
        ...right,
      },
      {
        heading: "Pool to the wall (h)",
        formula: unlessBlank(own("Inside width (mm)"), `POUR.POOLHOURS(${own("Inside width (mm)")},"mm")`),
        format: FORMATS.hours,
        ...right,
      },
      { heading: "Wick", look: "input", ...center },
    ],
    [...VESSELS.map(({ vessel, width, water, factor }) => [vessel, width, water, factor]), []],
  );
  return {
    name: "Vessels",
    widths: [20, 14, 14, 14, 14, 16.5, 16],
    cells: [
      ...heading(
        "Vessels",
        "Water to the fill line, and the wax factor (wax weight for one of water) of your test pours: together what fills a vessel. Pool to the wall: about an hour an inch, common practice. Wick: the one that you approved, by a press in the view Tests, where its candles were finished and within the limits.",
        7,
      ),
      ...list.cells.map((one) => (one.look === "heading" ? { ...one, lines: HEADING_LINES } : one)),
    ],
    tables: [list.table],
    frozenRows: 4,
    print: { paper: "a4" },
  };
}
