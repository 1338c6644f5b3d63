/**
 * Formulas that look at what is typed on a run sheet. What cannot be is said beside it and becomes no weight: a blank,
 * a text and an error are no numbers. What they say is short: it stands in one line of a narrow column.
 */

import { netLabel } from "../../core/label/netLabel";
import { FAR } from "../likelyWeight";
import type { Settings } from "../settings";
import { cellAt, HEAD } from "./layout";

const ifNumber = (cell: string, holds: string): string => `IF(ISNUMBER(${cell}),${holds},FALSE)`;
const isAboveZero = (cell: string): string => ifNumber(cell, `${cell}>0`);
const isAtLeastZero = (cell: string): string => ifNumber(cell, `${cell}>=0`);
const isWhole = (cell: string): string => ifNumber(cell, `AND(${cell}>=0,${cell}=INT(${cell}))`);

/** A day from 2000 to 2099: any other number is a slip. */
const IS_DAY = ifNumber(HEAD.date, `AND(${HEAD.date}>=36526,${HEAD.date}<73051,${HEAD.date}=INT(${HEAD.date}))`);
export const IS_DIVISION = isAboveZero(HEAD.division);
export const IS_CAPACITY = isAboveZero(HEAD.capacity);
export const IS_LOSS = ifNumber(HEAD.loss, `AND(${HEAD.loss}>=0,${HEAD.loss}<1)`);

/** How a remark on what is typed into a cell begins: what adds up candles looks for it. */
export const FIX = "Fix";
/** The remark on a cell: a number that was typed as text looks like one. */
const fix = (cell: string, what: string, wanted: string): string =>
  `"${FIX} ${what}: "&IF(ISTEXT(${cell}),"it is text","${wanted}")`;

/** What a rate typed as 6 for 6 % comes to. */
const tooMuch = (cell: string): string => `${cell}&" is "&ROUND(${cell}*100,6)&" %, write "&${cell}&"%"`;

/** What to fix in the figures of the head. */
export const HEAD_REMARK = `=${[
  [IS_DAY, fix(HEAD.date, "the date", "write a day such as 2026-11-26")],
  [IS_DIVISION, fix(HEAD.division, "what the scale reads to", "a number above 0")],
  [IS_CAPACITY, fix(HEAD.capacity, "what the pot holds", "a number above 0")],
  [
    IS_LOSS,
    `IF(${ifNumber(HEAD.loss, `${HEAD.loss}>=1`)},"${FIX} the extra to melt: "&${tooMuch(HEAD.loss)},${fix(HEAD.loss, "the extra to melt", "0% or more, 0% for none")})`,
  ],
]
  .map(([holds, remark]) => `IF(${holds},"",${remark}&". ")`)
  .join("&")}`;

/** What to fix in the row of an ingredient: its share, parts or a load, and what was weighed of it. */
export function ingredientRemark(row: number): string {
  const [share, basis] = [cellAt("share", row), cellAt("basis", row)];
  const isBasis = `OR(${basis}="part",${basis}="of wax",${basis}="of total")`;
  const rest = `IF(${isBasis},${remarkOnActual(row)},"${FIX} basis: part or of wax")`;
  const load = `IF(AND(${basis}<>"part",${share}>=1),"${FIX}: "&${tooMuch(share)},${rest})`;
  return `=IF(${isAtLeastZero(share)},${load},${fix(share, "share", "0 or more")})`;
}

/** How the remark on an actual weight begins: a pot with one has no sum of them. */
export const FIX_ACTUAL = "Fix actual weight";
function remarkOnActual(row: number): string {
  const actual = cellAt("actual", row);
  return `IF(${actual}="","",IF(${isAtLeastZero(actual)},"","${FIX_ACTUAL}"))`;
}
export const actualRemark = (row: number): string => `=${remarkOnActual(row)}`;

/** The fill of a row of vessels as the scale shows it; no number where a weight cannot be made of the row. */
export function fillFormula(row: number): string {
  const [count, fill] = [cellAt("count", row), cellAt("fill", row)];
  // Rounded twice: 1.15 / 0.1 is 11.499999999999998 as binary fractions go.
  const each = `ROUND(ROUND(${fill}/${HEAD.division},9),0)*${HEAD.division}`;
  return `=IF(AND(${isWhole(count)},${isAboveZero(fill)},${IS_DIVISION}),IF(${each}>0,${each},NA()),NA())`;
}

/** The day on which a cure ends, where its days and the date are days. */
export function cureFormula(row: number): string {
  const days = cellAt("days", row);
  return `=IF(AND(${IS_DAY},${isWhole(days)}),${HEAD.date}+${days},NA())`;
}
export function cureRemark(row: number): string {
  const days = cellAt("days", row);
  return `=IF(${isWhole(days)},IF(${IS_DAY},"","${FIX} the date at the top"),${fix(days, "the days", "whole, 0 or more")})`;
}

/**
 * In place of a net weight far above the fill, or below half of it. It may be no slip: what adds up candles counts the
 * row all the same.
 */
export const CHECK_HEAVY = "Check one without vessel";
export const CHECK_LIGHT = "Check the weight of one";

/**
 * The net weight to declare for a row of vessels, or what to fix in the row: as planned, and less once the candle that
 * was weighed holds less. One that holds more does not speak for the others.
 * @param planned the weight as planned, where it stays; left out it follows the row: the smaller of the planned fill
 * and what the scale shows of it
 */
export function labelFormula(row: number, { unit, label }: Pick<Settings, "unit" | "label">, planned?: number): string {
  const [count, fill, each] = [cellAt("count", row), cellAt("fill", row), cellAt("fillShown", row)];
  const [good, weighed] = [cellAt("good", row), cellAt("weighed", row)];
  const labelOf = (weight: string) => `POUR.NETLABEL(${weight},"${unit}","${label}")`;
  const inPlan = planned === undefined ? `MIN(${fill},${each})` : String(planned);
  const asPlanned = planned === undefined ? labelOf(inPlan) : `"${netLabel(planned, unit, label)}"`;
  // A label must not declare the vessel.
  const notHeavy = `IF(${weighed}<${fill}/2,"${CHECK_LIGHT}",${labelOf(`MIN(${inPlan},${weighed})`)})`;
  const known = `IF(${weighed}>${fill}*${1 + FAR},"${CHECK_HEAVY}",${notHeavy})`;
  const asPoured = `IF(${isAboveZero(weighed)},${known},"${FIX} the weight of one")`;
  const isGood = ifNumber(good, `AND(${good}>=0,${good}<=${count},${good}=INT(${good}))`);
  const rest = `IF(IF(${good}="",TRUE,${isGood}),IF(${weighed}="",${asPlanned},${asPoured}),"${FIX} good candles: 0 to "&${count})`;
  const checks = [
    [isWhole(count), fix(count, "count", "whole, 0 or more")],
    ...(planned === undefined
      ? [
          [isAboveZero(fill), fix(fill, "the fill", "above 0")],
          [IS_DIVISION, `"${FIX} what the scale reads to"`],
          [`ISNUMBER(${each})`, `"${FIX}: less than a scale step"`],
        ]
      : []),
  ];
  return `=${checks.reduceRight((then, [holds, remark]) => `IF(${holds},${then},${remark})`, rest)}`;
}
