import type { Sheet } from "../../sheet/sheet";
import { FORMATS } from "../formats";
import { cell, heading, lookUp, setting, table, thisRow } from "../layout";
import { PRODUCTS } from "./products";

const own = thisRow("Range");
const right = { align: "right" } as const;
const money = { format: FORMATS.money, ...right };
const margin = { format: FORMATS.margin, ...right };

/** The settings that other sheets use. */
export const REJECTS = "Range!$B$7";
export const DEARER = "Range!$B$9";
export const MARGIN = "Range!$B$4";
/** A share too small to speak of: a price just at the asking price may miss the margin by how computers round. */
export const TINY = "0.000000001";

const FEES = "$B$5,$B$6";
const HEADING = 11;

const costOf = (column: string): string => `=${lookUp("Candles", column, "Candle", own("Candle"))}`;
const marginOf = (cost: string): string => `=POUR.MARGINOF(${own("Price now")},${own(cost)},${FEES})`;
const askFor = (cost: string): string => `=POUR.ASKPRICE(${own(cost)},$B$4,${FEES})`;
/** Rounded up to a hundredth, so that the price raised by it leaves the margin. FIXED minds the reader's decimal point. */
const RAISE = `ROUNDUP(ROUND(${own("Asking price")}-${own("Price now")},9),2)`;

/** The rows of the range, from 0, both included. */
export const RANGE = { first: HEADING + 1, last: HEADING + PRODUCTS.length };

/** Cost, margin and asking price of every candle, now and when wax has become dearer. */
export function range(): Sheet {
  const list = table(
    "Range",
    HEADING,
    0,
    [
      { heading: "Candle", look: "input", choices: ["Candles", "Candle"] },
      { heading: "Price now", look: "input", ...money },
      { heading: "Cost", formula: costOf("Cost"), ...money },
      { heading: "Margin now", formula: marginOf("Cost"), ...margin },
      { heading: "Asking price", formula: askFor("Cost"), ...money },
      {
        heading: "Check",
        formula: `=IF(${own("Margin now")}<$B$4-${TINY},"raise by "&FIXED(${RAISE},2),"")`,
        look: "alert",
        align: "center",
      },
      {
        heading: "Break even",
        formula: `=POUR.BREAKEVEN($B$8,${own("Price now")},${own("Cost")},${FEES})`,
        format: FORMATS.count,
        ...right,
      },
      { heading: "Cost with dearer wax", formula: costOf("Cost with dearer wax"), ...money },
      { heading: "Margin with dearer wax", formula: marginOf("Cost with dearer wax"), ...margin },
      { heading: "Asking price with dearer wax", formula: askFor("Cost with dearer wax"), ...money },
    ],
    PRODUCTS.map(({ candle, price }) => [candle, price]),
  );
  return {
    name: "Range",
    widths: [31, 12, 11, 13, 13, 17, 13, 12, 14, 13],
    cells: [
      ...heading(
        "Range of candles",
        "Check says by how much to raise a price that does not leave the target margin. The last three columns say how it is when wax becomes dearer.",
        10,
      ),
      ...setting(
        3,
        "Target margin",
        0.5,
        "What a sale leaves after cost and fees, as a share of the price.",
        10,
        FORMATS.margin,
      ),
      ...setting(4, "Fee, share of the price", 0.065, "What the marketplace keeps.", 10, FORMATS.margin),
      ...setting(5, "Fee, each sale", 0.25, "What a payment costs, however much it is.", 10, FORMATS.money),
      ...setting(6, "Rejects", 0.04, "Candles that cannot be sold; the good candles pay for them.", 10, FORMATS.margin),
      ...setting(
        7,
        "Fixed costs",
        260,
        "A stall at the fair: Break even says how many of one candle pay for it.",
        10,
        FORMATS.money,
      ),
      ...setting(8, "Wax dearer by", 0.15, "What if? Every wax by this share; write 0.15 or 15%.", 10, FORMATS.margin),
      cell(
        HEADING - 2,
        0,
        { formula: '=IF(LEN(Candles!A3)=0,"","Check the sheet Candles: something there is to fix.")' },
        { look: "alert", across: 10 },
      ),
      ...list.cells,
    ],
    tables: [list.table],
    print: { paper: "a4", landscape: true, repeatRows: [HEADING, HEADING] },
  };
}
