import type { Sheet } from "../../sheet/sheet";
import { FORMATS } from "../formats";
import { cell, heading, lookUp, setting, table, thisRow } from "../layout";
import { PRODUCTS } from "./products";

const own = thisRow("Line");
const right = { align: "right" } as const;
const money = { format: FORMATS.money, ...right };
const margin = { format: FORMATS.margin, ...right };

/** The settings that other sheets use. */
export const REJECTS = "Line!$B$7";
export const DEARER = "Line!$B$9";
export const MARGIN = "Line!$B$4";
/** A share too small to speak of: a price just at the ask price may miss the margin by how computers round. */
export const TINY = "0.000000001";

const FEES = "$B$5,$B$6";
const HEADING = 11;

const costOf = (column: string): string => `=${lookUp("Candles", column, "Candle", own("Candle"))}`;
const marginOf = (cost: string): string => `=POUR.MARGINOF(${own("Price now")},${own(cost)},${FEES})`;
const askFor = (cost: string): string => `=POUR.ASKPRICE(${own(cost)},$B$4,${FEES})`;
/** Rounded up to a hundredth, so that the price raised by it leaves the margin. FIXED minds the reader's decimal point. */
const RAISE = `ROUNDUP(ROUND(${own("Ask price")}-${own("Price now")},9),2)`;

/** The rows of the line, from 0, both included. */
export const LINE = { first: HEADING + 1, last: HEADING + PRODUCTS.length };

/** Cost, margin and ask price of every candle, now and when wax has become dearer. */
export function line(): Sheet {
  const list = table(
    "Line",
    HEADING,
    0,
    [
      { heading: "Candle", look: "input" },
      { heading: "Price now", look: "input", ...money },
      { heading: "Cost", formula: costOf("Cost"), ...money },
      { heading: "Margin now", formula: marginOf("Cost"), ...margin },
      { heading: "Ask price", formula: askFor("Cost"), ...money },
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
      { heading: "Cost then", formula: costOf("Cost then"), ...money },
      { heading: "Margin then", formula: marginOf("Cost then"), ...margin },
      { heading: "Ask price then", formula: askFor("Cost then"), ...money },
    ],
    PRODUCTS.map(({ candle, price }) => [candle, price]),
  );
  return {
    name: "Line",
    widths: [31, 12, 11, 13, 12, 17, 13, 12, 14, 12],
    cells: [
      ...heading(
        "The line",
        "Check says by how much to raise a price that does not leave the margin wished. The last three columns say how it would be with dearer wax.",
        10,
      ),
      ...setting(
        3,
        "Margin wished",
        0.5,
        "What a sale leaves after cost and fees, as a share of the price.",
        10,
        FORMATS.margin,
      ),
      ...setting(4, "Fee, share of the price", 0.065, "What the marketplace keeps.", 10, FORMATS.margin),
      ...setting(5, "Fee, each sale", 0.25, "What a payment costs, however much it is.", 10, FORMATS.money),
      ...setting(6, "Rejects", 0.04, "Candles that cannot be sold; the good ones pay for them.", 10, FORMATS.margin),
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
        { formula: '=IF(LEN(Candles!A3)=0,"","See the complaint on the sheet Candles.")' },
        { look: "alert", across: 10 },
      ),
      cell(HEADING - 1, 7, "With dearer wax", { look: "label", align: "center", across: 3 }),
      ...list.cells,
    ],
    tables: [list.table],
    print: { paper: "a4", landscape: true, repeatRows: [HEADING, HEADING] },
  };
}
