import type { Sheet } from "../../sheet/sheet";
import { FORMATS } from "../formats";
import { cell, heading, table, thisRow } from "../layout";

const own = thisRow("TestPours");
const weight = { look: "input", format: FORMATS.weight, align: "right" } as const;
const factor = { format: FORMATS.factor, align: "right" } as const;
const RANGES = "TestPours[Water weight (g)],TestPours[Poured (g)]";

/** Test pours of one vessel, the factor they give and how sure it is. The last row is free. */
export function testPours(): Sheet {
  const list = table(
    "TestPours",
    3,
    0,
    [
      { heading: "Pour", look: "input", align: "center" },
      { heading: "Water weight (g)", ...weight },
      { heading: "Poured (g)", ...weight },
      {
        heading: "Ratio",
        formula: `=IF(COUNTA(${own("Water weight (g)")},${own("Poured (g)")})=0,"",IF(COUNT(${own("Water weight (g)")},${own("Poured (g)")})<2,"left out",${own("Poured (g)")}/${own("Water weight (g)")}))`,
        ...factor,
      },
    ],
    [[1, 248.2, 216.7], [2, 247.4, 215.1], [3, 249, 217.6], [4, 248.4, 216.2], [5, 247.8, 216.4], [6, 248.6, 217], []],
  );
  const result = (row: number, label: string, formula: string) => [
    cell(row, 5, label, { look: "label" }),
    cell(row, 6, { formula }, factor),
  ];
  return {
    name: "Test pours",
    widths: [8, 13, 12, 10, 4, 24, 12],
    cells: [
      ...heading(
        "Test pours: straight tumbler",
        "Water to the fill line, then the wax that filled it to the same line. Vessels keeps this factor for the straight tumbler, rounded.",
        7,
      ),
      ...list.cells,
      ...result(4, "Wax factor", `=POUR.WAXFACTOR(${RANGES})`),
      ...result(5, "Spread, either way", `=POUR.WAXFACTORSPREAD(${RANGES})`),
      ...result(6, "So at least", "=G5-G6"),
      ...result(7, "and at most", "=G5+G6"),
      cell(8, 5, "Holds for 19 of 20 such series.", { look: "note", across: 2 }),
    ],
    tables: [list.table],
    frozenRows: 4,
    print: { paper: "a4", repeatRows: [3, 3] },
  };
}
