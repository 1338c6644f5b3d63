import type { Sheet } from "../../sheet/sheet";
import { FORMATS } from "../formats";
import { type Column, cell, heading, lookUp, setting, table, thisRow, unlessBlank } from "../layout";
import { DEARER, FEES, HOUR, MARGIN, REJECTS, STYLE, WRONG_SETTING } from "./candleSettings";
import { PRODUCTS } from "./products";
import { allSaid, SLIP_CELL } from "./slips";

const own = thisRow("Candles");
const [candle, vessel, scent] = [own("Candle"), own("Vessel"), own("Scent")];
const right = { align: "right" } as const;
const money = { format: FORMATS.money, ...right };
const typedMoney = { look: "input", ...money } as const;
const margin = { format: FORMATS.margin, ...right };

const ACROSS = 14;
const HEADING = 12;
/** The line below the settings that says what is wrong with them, and with what the costs are worked out from. */
const SLIPS = HEADING - 1;
const FREE = 2;

/** A share too small to speak of: a price just at the asking price may miss the margin by how computers round. */
export const TINY = "0.000000001";

/** The rows of the candles, from 0, free ones included. */
export const CANDLES = { first: HEADING + 1, rows: PRODUCTS.length + FREE };

const ofScent = (column: string): string => lookUp("Scents", column, "Scent", scent);
const ofVessel = (column: string): string => lookUp("Vessels", column, "Vessel", vessel);

const [FILL, MATERIALS, COMPONENTS, MINUTES, COST, PRICE, NOW] = [
  ...["Fill (g)", "Materials", "Vessel fitted", "Minutes", "Cost", "Price now", "Margin now"],
].map(own) as [string, string, string, string, string, string, string];

/** Blank where there is no fill; an error stays one, that nobody takes it for a blank. */
const ofFill = (formula: string): string => `=IF(N(${FILL})=0,"",${formula})`;
const unlessIn = (table: string, key: string, name: string, formula: string): string =>
  `IF(ISNA(MATCH(${name},${table}[${key}],0)),"no such ${key.toLowerCase()}",${formula})`;
const HUNDRED = ofScent("Cost of 100 g");
/** A text counts as 0, and five minutes written as a time are 0.0035 of a day. */
const NO_MINUTES = `IF(COUNTA(${MINUTES})=0,"",IF(COUNT(${MINUTES})=0,"Minutes: write a number",IF(${MINUTES}<0,"Minutes: below 0",IF(AND(${MINUTES}>0,${MINUTES}<0.1),"Minutes: write 5, not 0:05",""))))`;
/** What stands in the place of a figure says what is missing. */
const LACKING = `TRIM(T(${FILL})&" "&T(${COMPONENTS})&" "&T(${MATERIALS})&" "&${NO_MINUTES})`;
/** No cost where anything is missing: it would be too low. */
const WHOLE = `=IF(LEN(${candle}&${vessel})=0,"",IF(LEN(${LACKING})>0,"",POUR.CANDLECOST(${FILL},${MATERIALS}/${FILL},${COMPONENTS},N(${MINUTES})/60*${HOUR},${REJECTS})))`;
const DEARER_COST = `${COST}+${FILL}/100*${ofScent("Wax in that cost")}*${DEARER}/(1-${REJECTS})`;

/** Rounded up to a hundredth, so that the price raised by it leaves the margin. FIXED minds the reader's decimal point. */
const RAISE = `ROUNDUP(ROUND(${own("Asking price")}-${PRICE},9),2)`;
const PRICE_ADVICE = `IF(COUNTA(${PRICE})>COUNT(${PRICE}),"Price now: write a number",IF(LEN(${NOW})=0,"no price now",IF(${NOW}<${MARGIN}-${TINY},"raise by "&FIXED(${RAISE},2),"")))`;
/** Half a minute may be meant, and half past five may be five and a half. */
const ADVICE = `IF(N(${MINUTES})=0,"no minutes: no labour",TRIM(IF(${MINUTES}<1,"minutes below 1? ","")&${PRICE_ADVICE}))`;
const CHECK = `=IF(LEN(${candle}&${vessel})=0,"",IF(LEN(${COST})=0,${LACKING},${ADVICE}))`;

const COLUMNS: readonly Column[] = [
  { heading: "Candle", look: "input" },
  { heading: "Vessel", look: "input", choices: ["Vessels", "Vessel"] },
  { heading: "Scent", look: "input", choices: ["Scents", "Scent"] },
  { heading: "Minutes", look: "input", format: FORMATS.count, ...right },
  { heading: "Price now", ...typedMoney },
  {
    heading: "Fill (g)",
    formula: `=IF(LEN(${candle}&${vessel})=0,"",${unlessIn("Vessels", "Vessel", vessel, ofVessel("Fill weight (g)"))})`,
    format: FORMATS.scale,
    ...right,
  },
  {
    heading: "Materials",
    formula: ofFill(unlessIn("Scents", "Scent", scent, `IFERROR(${FILL}/100*${HUNDRED},${HUNDRED})`)),
    ...money,
  },
  {
    heading: "Vessel fitted",
    formula: unlessBlank(vessel, `IF(LEN(T(${FILL}))>0,"",${ofVessel("Cost fitted")})`),
    ...money,
  },
  { heading: "Cost", formula: WHOLE, ...money },
  {
    heading: "Margin now",
    formula: `=IF(OR(N(${PRICE})=0,N(${COST})=0),"",POUR.MARGINOF(${PRICE},${COST},${FEES}))`,
    ...margin,
  },
  { heading: "Asking price", formula: unlessBlank(COST, `POUR.ASKPRICE(${COST},${MARGIN},${FEES})`), ...money },
  {
    heading: "Margin with dearer wax",
    formula: unlessBlank(NOW, `POUR.MARGINOF(${PRICE},${DEARER_COST},${FEES})`),
    ...margin,
  },
  { heading: "Net weight", formula: ofFill(`POUR.NETLABEL(${FILL},"g",${STYLE})`), align: "center" },
  { heading: "Check", formula: CHECK, look: "alert" },
];

const FROM_OTHERS = ["Moves", "Components", "Recipes"].map(
  (sheet) => `IF(LEN(${sheet}!${SLIP_CELL})=0,"","${sheet}: "&${sheet}!${SLIP_CELL})`,
);

/** The candles of the range, one row each: all but its name, vessel, scent, minutes and price follows. */
export function candles(): Sheet {
  const list = table("Candles", HEADING, 0, COLUMNS, [...PRODUCTS, ...Array.from({ length: FREE }, () => [])]);
  const money = FORMATS.money;
  const share = FORMATS.margin;
  return {
    name: "Candles",
    widths: [20, 18, 18, 8, 7, 7, 10, 9, 7, 8, 8, 9, 26, 19],
    cells: [
      ...heading(
        "Candles",
        "A new candle is one row: its fill, materials, components, cost, margin and label come from the other sheets. Vessel fitted is the vessel with its components. Check says what is missing, or by how much to raise a price that does not leave the target margin. A cost with anything missing is not shown.",
        ACROSS,
      ),
      ...setting(
        3,
        "Prices from",
        "last paid",
        'Write "last paid" (by the sheet Moves) or "pack" (by the sheet Items).',
        10,
      ),
      ...setting(4, "Labour, one hour", 15, "Minutes are for one candle, shared out over a batch.", 10, money),
      ...setting(5, "Rejects", 0.04, "Candles that cannot be sold; the good candles pay for them.", 10, share),
      ...setting(
        6,
        "Target margin",
        0.5,
        "What a sale leaves after cost and fees, as a share of the price.",
        10,
        share,
      ),
      ...setting(7, "Fee, of the price", 0.065, "What the marketplace keeps.", 10, share),
      ...setting(8, "Fee, each sale", 0.25, "What a payment costs, however much it is.", 10, money),
      ...setting(9, "Wax dearer by", 0.15, "What if? Every wax by this share; write 0.15 or 15%.", 10, share),
      ...setting(10, "Net weight in", "us", 'Write "us" for ounces and grams, or "metric" for grams alone.', 10),
      cell(SLIPS, 0, { formula: `=${allSaid([WRONG_SETTING, ...FROM_OTHERS])}` }, { look: "alert", across: ACROSS }),
      ...list.cells,
    ],
    tables: [list.table],
    print: { paper: "a4", landscape: true, repeatRows: [HEADING, HEADING] },
  };
}
