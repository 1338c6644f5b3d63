import type { Sheet } from "../../sheet/sheet";
import { FORMATS } from "../formats";
import { cell, day, heading, headingRow, setting, table, thisRow } from "../layout";

const own = thisRow("Lots");
const right = { align: "right" } as const;
const money = { format: FORMATS.money, ...right };

const METHODS = ["first in", "average"];

/** Lots of one wax by the day they were bought, and what the wax used up has cost. The last rows are free. */
export function lots(): Sheet {
  const list = table(
    "Lots",
    10,
    0,
    [
      { heading: "Bought", look: "input", format: FORMATS.date, align: "center" },
      { heading: "Kilograms", look: "input", format: FORMATS.weight, ...right },
      { heading: "Paid", look: "input", ...money },
      { heading: "Lot", formula: `=POUR.LOTCODE(${own("Bought")},1,"SOY")`, align: "center" },
      {
        heading: "Price of a kg",
        formula: `=POUR.UNITPRICE(${own("Paid")},${own("Kilograms")},"kg","kg")`,
        format: "0.000",
        ...right,
      },
    ],
    [
      [day(2026, 1, 12), 20, 98],
      [day(2026, 2, 23), 40, 190],
      [day(2026, 4, 7), 20, 101.5],
      [day(2026, 5, 18), 20, 103.5],
      [],
      [],
    ],
  );
  const row = (at: number, method: string) => [
    cell(at, 0, method),
    cell(at, 1, { formula: `=POUR.STOCKCOST(Lots[Kilograms],Lots[Price of a kg],$B$4,A${at + 1})` }, money),
    cell(at, 2, { formula: `=IF($B$4=0,"",B${at + 1}/$B$4)` }, { format: "0.000", ...right }),
    cell(at, 3, { formula: `=SUM(Lots[Paid])-B${at + 1}` }, money),
  ];
  return {
    name: "Lots",
    widths: [15, 15, 15, 23, 15],
    cells: [
      ...heading(
        "Lots of soy wax",
        "One row for each lot, the oldest first. What was used is taken from the oldest lots first, or at the average price of all.",
        5,
      ),
      ...setting(3, "Used (kg)", 46, "At most what all the lots hold.", 5, FORMATS.weight),
      ...headingRow(5, 0, [
        { heading: "Method" },
        { heading: "Cost of what was used", ...right },
        { heading: "Price of a kg used", ...right },
        { heading: "Cost of what is left", ...right },
      ]),
      ...METHODS.flatMap((method, i) => row(6 + i, method)),
      ...list.cells,
    ],
    tables: [list.table],
    print: { paper: "a4", repeatRows: [10, 10] },
  };
}
