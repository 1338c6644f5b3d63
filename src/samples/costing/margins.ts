import type { Sheet } from "../../sheet/sheet";
import { FORMATS } from "../formats";
import { cell, heading, headingRow } from "../layout";
import { LINE, MARGIN, TINY } from "./line";

const right = { align: "right" } as const;

/** The margins of the line at a glance, now and with dearer wax. */
export function margins(): Sheet {
  const both = (row: number, label: string, formula: (column: string) => string, format: string) => [
    cell(row, 0, label),
    ...["Margin now", "Margin then"].map((column, i) =>
      cell(row, 1 + i, { formula: formula(`Line[${column}]`) }, { format, ...right }),
    ),
  ];
  const ofLine = (column: number) => ({
    sheet: "Line",
    row: LINE.first,
    column,
    rows: LINE.last - LINE.first + 1,
    columns: 1,
  });
  const series = [
    { name: "Now", x: ofLine(0), y: ofLine(3) },
    { name: "With dearer wax", x: ofLine(0), y: ofLine(8) },
  ];
  return {
    name: "Margins",
    widths: [34, 14, 20, 24],
    cells: [
      ...heading("Margins", "How much dearer the wax becomes is set on the sheet Line.", 4),
      ...headingRow(3, 0, [
        { heading: "The line" },
        { heading: "Now", ...right },
        { heading: "With dearer wax", ...right },
      ]),
      ...both(4, "Candles below the margin wished", (of) => `=COUNTIF(${of},"<"&${MARGIN}-${TINY})`, FORMATS.count),
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
