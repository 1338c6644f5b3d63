import type { Sheet } from "../../sheet/sheet";
import { FORMATS } from "../formats";
import { cell, heading, headingRow, lookUp, setting } from "../layout";
import { FEES, MARGIN } from "./candleSettings";
import { CANDLES, TINY } from "./candles";

const right = { align: "right" } as const;
const [NOW, THEN] = ["Margin now", "Margin with dearer wax"];
const of = (column: string): string => lookUp("Candles", column, "Candle", "$B$10");

const WITHOUT = `SUMPRODUCT((Candles[Candle]<>"")*(Candles[${NOW}]=""))`;

/** The margins of the range at a glance, now and with dearer wax, and how many candles pay for a day at a fair. */
export function margins(): Sheet {
  const both = (row: number, label: string, formula: (column: string) => string, format: string) => [
    cell(row, 0, label),
    ...[NOW, THEN].map((column, i) =>
      cell(row, 1 + i, { formula: formula(`Candles[${column}]`) }, { format, ...right }),
    ),
  ];
  const ofCandles = (column: number) => ({
    ...{ sheet: "Candles", row: CANDLES.first, column },
    ...{ rows: CANDLES.rows, columns: 1 },
  });
  const series = [
    { name: "Now", x: ofCandles(0), y: ofCandles(9) },
    { name: "With dearer wax", x: ofCandles(0), y: ofCandles(11) },
  ];
  return {
    name: "Margins",
    widths: [31, 17, 20, 24],
    cells: [
      ...heading("Margins", "Target margin, fees and how much dearer the wax becomes are set on the sheet Candles.", 4),
      ...headingRow(3, 0, [
        { heading: "Range of candles" },
        { heading: "Now", ...right },
        { heading: "With dearer wax", ...right },
      ]),
      ...both(
        4,
        "Below the target margin",
        (of) => `=SUMPRODUCT(ISNUMBER(${of})*(${of}<${MARGIN}-${TINY}))`,
        FORMATS.count,
      ),
      ...both(5, "Lowest margin", (of) => `=MIN(${of})`, FORMATS.margin),
      ...both(6, "Highest margin", (of) => `=MAX(${of})`, FORMATS.margin),
      cell(
        7,
        0,
        { formula: `=IF(${WITHOUT}=0,"",${WITHOUT}&" without a margin: Check on the sheet Candles says why.")` },
        { look: "alert", across: 4 },
      ),
      ...setting(8, "Fixed costs", 260, "A stall at the fair.", 4, FORMATS.money),
      ...setting(9, "Candle", "Quince, tumbler", "A name from the sheet Candles.", 4),
      cell(10, 0, "Candles that pay for it", { look: "total" }),
      cell(
        10,
        1,
        { formula: `=POUR.BREAKEVEN($B$9,${of("Price now")},${of("Cost")},${FEES})` },
        { look: "total", format: FORMATS.count, ...right },
      ),
    ],
    charts: [
      {
        kind: "bars",
        title: "Margin of each candle",
        xTitle: "",
        yTitle: "Margin, share of the price",
        format: "0%",
        series,
        place: { row: 12, column: 0, rows: 32, columns: 4 },
      },
    ],
    print: { paper: "a4" },
  };
}
