/** The words of planning a burn-test series. */

import { passBound } from "../../core/burn/passBound";
import { list } from "../../core/check/list";
import { plain } from "../../core/check/plain";
import type { Basis } from "../../core/scent/basis";
import { dayText } from "../../runsheet/dayText";
import { formatWeight } from "../../runsheet/likelyWeight";
import { atMost } from "../../runsheet/percent";
import { loadText } from "../../runsheet/plan/loadText";
import { packWords } from "../../runsheet/plan/packWords";
import { othersOf, type Totals } from "../../runsheet/plan/runPlan";
import type { Lack, Shelf } from "../../runsheet/plan/shortages";
import { CYCLE, FEW, type Series } from "../../runsheet/series/planSeries";
import type { WeightUnit } from "../../runsheet/settings";
import { fieldName } from "../../runsheet/tables/registry";
import { oneWickOrTwo } from "../../runsheet/tables/wick";
import { PREVIEW } from "./preview";

/** The highest fault rate that so many candles without a fault leave possible. */
const leftPossible = (candles: number): string => `${atMost(1 - passBound(candles, candles))} %`;

const counted = (count: number, one: string, more = `${one}s`): string => `${count} ${count === 1 ? one : more}`;

export const SERIES = {
  heading: "Plan a series",
  hint: "Which wick suits a vessel, a wax and a scent (fragrance oil)? Some candles of each wick are burnt in an order as by chance. A press writes a row for each candle, its readings to fill in, and its card to print.",
  vessel: "Vessel",
  width: "Inside width",
  widthUnit: "Width in",
  wax: "Wax (blank: the usual)",
  scent: "Scent (blank: none)",
  load: (basis: Basis) => `Load (${basis})`,
  wicks: "Wicks to try, one a line or parted by commas",
  knownWicks: "Wicks that your tables name",
  addWick: (wick: string) => `Add ${wick}`,
  candles: "Candles of each wick",
  poured: "Poured on",
  cure: "Cure days",
  cycles: "Cycles to begin with",
  atOnce: "Candles at once",
  product: "Product",
  code: "Code of the series",
  why: `${FEW} candles of a wick without a fault still leave a fault rate of up to ${leftPossible(FEW)} possible, fewer leave more. A cycle is ${CYCLE} minutes at most; a candle burns on until 10 mm of wax are left.`,
  write: "Write the series",
  writeAnyway: "Write anyway",
  doubts: "Check these first:",
  fix: "Fix these first:",
  takes: "What it takes:",
  changed: "The tables have changed since this was shown. Look at it once more, then press again.",
  noDay: "choose a day",
  bareLoad: "is given and no scent; name the scent, or clear the load",
  usedCode: (test: string, next: string) => `${test} is a test already; write another code, such as ${next}`,
  missingColumns: (table: string, fields: string) =>
    `${table} has no column for ${fields}. Fix the heading, or choose the column or no table under More tables; then a series can be written.`,
  rowsBelow: (rows: number, table: string) =>
    `${counted(rows, "row")} right below ${table} ${rows === 1 ? "is" : "are"} no part of it, and may name tests. Make ${rows === 1 ? "it a row" : "them rows"} of the table, or move ${rows === 1 ? "it" : "them"} away.`,
  few: (candles: number) =>
    `${counted(candles, "candle")} of a wick ${candles === 1 ? "says" : "say"} little: without a fault ${candles === 1 ? "it leaves" : "they leave"} a fault rate of up to ${leftPossible(candles)} possible, ${FEW} of up to ${leftPossible(FEW)}. ${FEW} or more are advised`,
  columnless: (table: string, fields: readonly string[]) =>
    `${table} has no column for ${list(
      fields.map((field) => fieldName("burnTests", field)),
      "and",
    )}: what is written here of it will not be known when the tests are read`,
  teaLight: (table: string) =>
    `${table} has no column for Product: its tea lights would be held to the flame of a container; add the column first`,
  noWidth: "no inside width is written: without it nobody can say how much of the vessel the melt pool covers",
  oddWidth: (mm: number) => `an inside width of ${plain(Number(mm.toPrecision(4)))} mm: is its unit right?`,
  otherWidth: (vessel: string, mm: number) =>
    `${vessel} was ${plain(Number(mm.toPrecision(4)))} mm wide inside in the tests before`,
  alike: (names: readonly string[]) => `${oneWickOrTwo(names)} Write it as the tables do if it is one.`,
  /** Each with the name that it may be a slip of. */
  unknown: (all: readonly { readonly name: string; readonly near: string | undefined }[]): string[] => {
    const [first, ...more] = all.flatMap(({ name, near }) => (near === undefined ? [name] : []));
    return [
      ...all.flatMap(({ name, near }) =>
        near === undefined ? [] : [`${name} stands in no table: is it ${near}, or new?`],
      ),
      ...(first === undefined
        ? []
        : more.length === 0
          ? [`${first} stands in no table: is it spelt as there, or new?`]
          : [`${list([first, ...more], "and")} stand in no table: are they spelt as there, or new?`]),
    ];
  },
  past: (day: number) => `the first day to burn on, ${dayText(day)}, is over`,
  done: (code: string, tests: string, rows: number, readings: string, looks: number, cards: string) =>
    `Series ${code} is written: ${counted(rows, "row")} in ${tests}, ${counted(looks, "row")} in ${readings}, and ${counted(rows, "card")} to print on the sheet ${cards}.`,
} as const;

/** The candles of a series in a line. */
export function candlesLine({ candles }: Series, wicks: number): string {
  const [first, last] = [candles[0]?.test, candles.at(-1)?.test];
  const each = candles.length / wicks;
  return `${counted(candles.length, "candle")}, ${each} of each of ${counted(wicks, "wick")}: ${first === last ? first : `${first} to ${last}`}`;
}

/** What they are made of, where the vessel's fill is known. */
export function weightsLine(
  totals: Totals | undefined,
  { vessel, load, unit }: { readonly vessel: string; readonly load: number | undefined; readonly unit: WeightUnit },
): string {
  const at = load === undefined ? "" : ` at ${loadText({ load, basis: "of wax" })}`;
  if (!totals)
    return `Wax and scent: not known, for ${vessel} has no water weight in the table of vessels${load === undefined ? "" : `; the load is ${loadText({ load, basis: "of wax" })}`}`;
  const others = othersOf(totals);
  return [
    `Wax ${formatWeight(totals.wax, unit)}`,
    ...(load === undefined ? ["no scent"] : [`scent ${formatWeight(totals.scent, unit)}${at}`]),
    ...(others > 0 ? [`dye and additives ${formatWeight(others, unit)}`] : []),
    `in ${counted(totals.pots, "pot")}`,
  ].join(", ");
}

/** The hours and days of a series in lines. */
export function timeLines({ hours, watched, days, firstDay, lastDay }: Series, pouredOn: number): string[] {
  return [
    `${counted(watched, "hour")} to stay with burning candles (${counted(hours, "candle hour")}), on ${counted(days, "day")}, two cycles a day`,
    `Poured on ${dayText(pouredOn)}, first burn on ${dayText(firstDay)}, last on ${dayText(lastDay)}`,
  ];
}

/** What the shelf lacks, a line each; and what nobody knows. */
export function shelfLines(shelf: Shelf | undefined, lacks: readonly Lack[], unit: WeightUnit): string[] {
  if (!shelf) return ["No table says what is on hand, so the shelf is not checked"];
  const { unchecked } = shelf;
  const amount = ({ isCounted, missing }: Lack) => (isCounted ? plain(missing) : formatWeight(missing, unit));
  return [
    ...lacks.map((lack) =>
      PREVIEW.lack(
        lack.item,
        amount(lack),
        packWords(lack, unit),
        lack.cost === undefined ? undefined : lack.cost.toFixed(2),
      ),
    ),
    ...(unchecked.length > 0 ? [`Not checked, for nobody wrote what is on hand: ${unchecked.join(", ")}`] : []),
    ...(lacks.length === 0 && unchecked.length === 0 ? ["Nothing is missing on the shelf"] : []),
  ];
}
