import type { Sheet } from "../../sheet/sheet";
import { FORMATS } from "../formats";
import { cell, heading, headingRow } from "../layout";
import { MARGIN, RANGE, TINY } from "./range";

const right = { align: "right" } as const;

/** The margins of the range at a glance, now and with dearer wax. */
export function margins(): Sheet {
  const both = (row: number, label: string, formula: (column: string) => string, format: string) => [
    cell(row, 0, label),
    ...["Margin now", "Margin with dearer wax"].map((column, i) =>
      cell(row, 1 + i, { formula: formula(`Range[${column}]`) }, { format, ...right }),
    ),
  ];
  const ofRange = (column: number) => ({
    sheet: "Range",
    row: RANGE.first,
    column,
    rows: RANGE.last - RANGE.first + 1,
    columns: 1,
  });
  const series = [
    { name: "Now", x: ofRange(0), y: ofRange(3) },
    { name: "With dearer wax", x: ofRange(0), y: ofRange(8) },
  ];
  return {
    name: "Margins",
    widths: [34, 14, 20, 24],
    cells: [
      ...heading("Margins", "How much dearer the wax becomes is set on the sheet Range.", 4),
      ...headingRow(3, 0, [
        { heading: "Range of candles" },
        { heading: "Now", ...right },
        { heading: "With dearer wax", ...right },
      ]),
      ...both(4, "Candles below the target margin", (of) => `=COUNTIF(${of},"<"&${MARGIN}-${TINY})`, FORMATS.count),
      ...both(5, "Lowest margin", (of) => `=MIN(${of})`, FORMATS.margin),
      ...both(6, "Highest margin", (of) => `=MAX(${of})`, FORMATS.margin),
    ],
    charts: [
      {
        kind: "bars",
        title: "Margin of each candle",
        xTitle: "",
        yTitle: "Margin, share of the price",
        format: "0%",
        series,
        place: { row: 8, column: 0, rows: 32, columns: 4 },
      },
    ],
    print: { paper: "a4" },
  };
}
