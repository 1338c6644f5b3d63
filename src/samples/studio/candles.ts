import type { Sheet } from "../../sheet/sheet";
import { FORMATS } from "../formats";
import { type Column, heading, lookUp, setting, table, thisRow, unlessBlank } from "../layout";
import { PRODUCTS } from "./products";

const own = thisRow("Candles");
const [candle, vessel, scent] = [own("Candle"), own("Vessel"), own("Scent")];
const right = { align: "right" } as const;
const money = { format: FORMATS.money, ...right };
const typedMoney = { look: "input", ...money } as const;
const margin = { format: FORMATS.margin, ...right };

const ACROSS = 14;
const HEADING = 12;
const FREE = 2;

/** The settings above the table that other sheets use too. */
export const PRICES_FROM = "Candles!$B$4";
export const MARGIN = "Candles!$B$7";
export const FEES = "Candles!$B$8,Candles!$B$9";
const [HOUR, REJECTS, DEARER, STYLE] = ["$B$5", "$B$6", "$B$10", "$B$11"];
/** A share too small to speak of: a price just at the asking price may miss the margin by how computers round. */
export const TINY = "0.000000001";

/** The rows of the candles, from 0, free ones included. */
export const CANDLES = { first: HEADING + 1, rows: PRODUCTS.length + FREE };

const ofScent = (column: string): string => lookUp("Scents", column, "Scent", scent);
const ofVessel = (column: string): string => lookUp("Vessels", column, "Vessel", vessel);

const [FILL, MATERIALS, COMPONENTS, COST, PRICE, NOW] = [
  ...["Fill (g)", "Materials", "Vessel fitted", "Cost", "Price now", "Margin now"],
].map(own) as [string, string, string, string, string, string];

/** Blank where there is no fill; an error stays one, that nobody takes it for a blank. */
const ofFill = (formula: string): string => `=IF(N(${FILL})=0,"",${formula})`;
const unlessIn = (table: string, key: string, name: string, formula: string): string =>
  `IF(ISNA(MATCH(${name},${table}[${key}],0)),"no such ${key.toLowerCase()}",${formula})`;
const HUNDRED = ofScent("Cost of 100 g");
/** What stands in the place of a figure says what is missing. */
const LACKING = `TRIM(T(${FILL})&" "&T(${COMPONENTS})&" "&T(${MATERIALS}))`;
/** No cost where anything is missing: it would be too low. */
const WHOLE = `=IF(LEN(${candle}&${vessel})=0,"",IF(LEN(${LACKING})>0,"",POUR.CANDLECOST(${FILL},${MATERIALS}/${FILL},${COMPONENTS},N(${own("Minutes")})/60*${HOUR},${REJECTS})))`;
const DEARER_COST = `${COST}+${FILL}/100*${ofScent("Wax in that cost")}*${DEARER}/(1-${REJECTS})`;

/** Rounded up to a hundredth, so that the price raised by it leaves the margin. FIXED minds the reader's decimal point. */
const RAISE = `ROUNDUP(ROUND(${own("Asking price")}-${PRICE},9),2)`;
const ADVICE = `IF(LEN(${own("Minutes")})=0,"no minutes: no labour",IF(LEN(${NOW})=0,"no price now",IF(${NOW}<${MARGIN}-${TINY},"raise by "&FIXED(${RAISE},2),"")))`;
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
      ...list.cells,
    ],
    tables: [list.table],
    print: { paper: "a4", landscape: true, repeatRows: [HEADING, HEADING] },
  };
}
