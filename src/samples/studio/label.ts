import type { Sheet } from "../../sheet/sheet";
import { FORMATS } from "../formats";
import { cell, day, heading, lookUp, setting, type Value } from "../layout";

const ACROSS = 3;
const CANDLE = "$B$4";
const of = (column: string): string => lookUp("Candles", column, "Candle", CANDLE);
const CURE_DAYS = lookUp("Scents", "Cure days", "Scent", of("Scent"));
/** A blank would count as 0 days, or as the first day of all. */
const CURED = `IF(LEN($B$5)=0,"write the day in Poured on",IF(LEN(${CURE_DAYS})=0,"no cure days on Scents",IF(OR(${CURE_DAYS}<0,${CURE_DAYS}>366),"check Cure days on Scents",$B$5+${CURE_DAYS})))`;
const known = (formula: string): Value => ({
  formula: `=IF(COUNTIF(Candles[Candle],${CANDLE})=0,"not on the sheet Candles",${formula})`,
});

/** What a label of one candle says of its weight and its lot, and how many of it the batch makes. */
export function label(): Sheet {
  const line = (row: number, name: string, value: Value, format?: string) => [
    cell(row, 0, name),
    cell(row, 1, value, { align: "right", ...(format && { format }) }),
  ];
  return {
    name: "Label",
    widths: [24, 28, 44],
    cells: [
      ...heading("Label", "What a label takes from the other sheets, for one candle at a time.", ACROSS),
      ...setting(3, "Candle", "Quince, tumbler", "A name from the sheet Candles.", ACROSS),
      ...setting(4, "Poured on", day(2026, 11, 26), "The day of the run sheet.", ACROSS, FORMATS.date),
      ...setting(5, "Run", 1, "Which run of that day, as on its run sheet.", ACROSS, FORMATS.count),
      ...setting(6, "Prefix", "OST", "Put in front of every lot.", ACROSS),
      cell(8, 0, "The label says", { look: "label" }),
      ...line(9, "Net weight", known(of("Net weight"))),
      ...line(10, "Lot", { formula: "=POUR.LOTCODE($B$5,$B$6,$B$7)" }),
      cell(12, 0, "Beside it", { look: "label" }),
      ...line(13, "Cured on", known(CURED), FORMATS.date),
      ...line(
        14,
        "Labels for the batch",
        known(`SUMIFS(Batch[Quantity],Batch[Vessel],${of("Vessel")},Batch[Scent],${of("Scent")})`),
        FORMATS.count,
      ),
      cell(
        16,
        0,
        "The net weight is that of the planned fill, rounded down so that no label says more than there is; what the candles really weigh decides. What else a label must say, such as warnings, the maker and what is in the scent, differs from place to place: your local rules and the scent's own documents say it, not this sheet.",
        { look: "caution", across: ACROSS },
      ),
    ],
    print: { paper: "a4" },
  };
}
