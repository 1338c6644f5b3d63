import { lotCode } from "../core/label/lotCode";
import { netCheck } from "../core/label/netCheck";
import { netLabel } from "../core/label/netLabel";
import {
  aboveZeroOr,
  answer,
  date as dateArgument,
  mapCells,
  number,
  scalar,
  textOr,
  unit as unitArgument,
  valuesOf,
  zipRanges,
} from "./cells";

/**
 * Net weight as a label declares it, rounded down in each unit so that neither says more than there is.
 * @customfunction NETLABEL
 * @param weight Net weight, in unit; a cell or a range.
 * @param unit Unit of the weight: g, kg, oz or lb.
 * @param style "us" for ounces and grams, "metric" for grams or kilograms alone; "us" when left out.
 * @returns Text for the label: ounces to two places, pounds and ounces from one pound on; whole grams (tenths below 10 g), kilograms to three digits from 1 kg on.
 * @example =POUR.NETLABEL(8, "oz") gives "Net Wt 8 oz (226 g)"
 * @source 16 CFR 500.19: 1 oz is 28.3495 g and 1 lb is 453.592 g on a label, a millionth less than the exact ounce. Rounding down is the packer's safe side.
 */
export function NETLABEL(weight: any[][], unit: any[][], style?: any[][]): any[][] {
  return mapCells([number("weight", weight), unitArgument("unit", unit, "weight"), textOr("style", style)], netLabel);
}

/**
 * Checks weighed candles against their label: verdict, mean error, its limit, allowed shortfall, number short. No official inspection.
 * @customfunction NETCHECK
 * @param label Net weight on the label, in unit; where the label gives two, the larger.
 * @param weights Net weights of the candles weighed, without their vessels, in the same unit; a range. Blanks are left out; one under half or over twice the label is an error.
 * @param unit Unit of the label and the weights: g, kg, oz or lb.
 * @param rule "us" for NIST Handbook 133, "eu" for 76/211/EEC, "uk" for the same by SI 2006/659; "us" when left out.
 * @param lotSize How many candles the whole lot holds; when left out those weighed are taken as the whole lot, and the verdict says so.
 * @returns One row: verdict ("passes", "fails: ..." or "not enough weighed: ..."), mean error, lowest mean error that passes, what one candle may be short by, number short by more. Weights in unit. It is no official inspection.
 * @example =POUR.NETCHECK(200, {198;201;204}, "g", "eu") gives "passes, of a whole lot of 3" | 1 | 0 | 9 | 0
 * @source NIST Handbook 133, Category A. Its sample sizes and its table of allowable variations (Table 2-5; by pounds for labels in oz and lb) are from memory, not yet compared with the standard, all but the values for 113 g and 907 g: compare them before you rely on a verdict. Directive 76/211/EEC, reference test; that its percentages round up to a tenth of a gram is from memory too. Lots under 100 by UK SI 2006/659, Schedule 2: weighed whole, up to 5 % of them short. That the SI tests as the directive does is from memory.
 */
export function NETCHECK(label: any, weights: any[][], unit: any, rule?: any, lotSize?: any): any[][] {
  return answer(() => {
    const found = netCheck(
      scalar(number("label", label)),
      valuesOf(zipRanges([number("weights", weights)], [0]), (weight) => weight),
      scalar(unitArgument("unit", unit, "weight")),
      scalar(textOr("rule", rule)),
      scalar(aboveZeroOr("lotSize", lotSize)),
    );
    return [[found.verdict, found.meanError, found.meanLimit, found.allowedShortfall, found.numberShort]];
  });
}

/**
 * Lot code of a run: the year, the day of the year and the run of that day.
 * @customfunction LOTCODE
 * @param date Date of the pour, from 1 March 1900 on; a cell or a range.
 * @param run Which run of that day, a whole number from 1 to 99; a cell or a range.
 * @param prefix Text to put in front with a hyphen, at most 20 characters; none when left out.
 * @returns Text such as 2026-330-02.
 * @example =POUR.LOTCODE(DATE(2026,11,26), 2) gives "2026-330-02"
 * @source ISO 8601 ordinal date; the run number behind it is common practice, no source.
 */
export function LOTCODE(date: any[][], run: any[][], prefix?: any[][]): any[][] {
  return mapCells([dateArgument("date", date), number("run", run), textOr("prefix", prefix)], lotCode);
}
