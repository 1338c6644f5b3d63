/** The words of what burn tests show. */

import { list } from "../../core/check/list";
import { plain } from "../../core/check/plain";
import { atLeast } from "../../runsheet/percent";
import type { SeenWick } from "../../runsheet/series/readSeries";
import type { SeenMean } from "../../runsheet/series/seenFigures";
import { oneWickOrTwo } from "../../runsheet/tables/wick";

const counted = (count: number, one: string, more = `${one}s`): string => `${count} ${count === 1 ? one : more}`;
/** Three digits: candles tell no more. */
const rough = (value: number): string => plain(Number(value.toPrecision(3)));
/** A share of the wall, in whole percent. */
const share = (value: number): string => plain(Math.round(value * 100));

export const SEEN = {
  heading: "Read a series",
  hint: "What was seen of each wick, by the tables of burn tests and readings. It says nothing of candles that were not burnt: a burn-test laboratory has the last word.",
  nothing: "No burn test stands in the tables yet. Plan a series below, burn its candles and fill in their readings.",
  notBegun: "Nothing is read yet: burn a first cycle, and fill in its readings.",
  noReadings: "No table of readings is chosen, so nothing is known of the burn tests.",
  strays: (tests: readonly string[], table: string | undefined) =>
    `${list(tests.slice(0, 5), "and")}${tests.length > 5 ? " and more" : ""}: readings, and no row in ${table || "the table of burn tests"}. Fix the name, or add the test there.`,
  alike: (names: readonly string[]) => `${oneWickOrTwo(names)} Each is read by itself; spell it alike if it is one.`,
  missingColumns: (table: string, fields: string) =>
    `${table} has no column for ${fields}. Fix the heading, or choose the column or no table under More tables.`,
  size: (candles: number, wicks: number) => `${counted(candles, "candle")} of ${counted(wicks, "wick")}`,
  rate: "Burn rate",
  flame: "Highest flame",
  pool: "Melt pool, of the inside width",
  soot: "Soot",
  throw: "Throw",
  passed: "Passed",
  life: "Burns down in",
  surer: "To be surer",
  notRead: "not read",
  noWidth: "no pool and inside width read",
  noWick: "no wick named",
  byCandle: (wick: string) => `Candles of ${wick || "no wick"}`,
  write: "Write on a sheet",
  writeHint: "A new sheet that follows the readings: what is changed or added later shows there by itself.",
  written: (sheet: string) => `Written: ${sheet}. It follows the readings.`,
  gone: "The tables have changed: this series is not there any more. Look again.",
  tooMuch: (formulas: number, most: number) =>
    `Nothing was written: the sheet would have ${formulas} formulas, and no more than ${most} are worked out here in reasonable time. Read it here in the pane.`,
  picture: (unit: string) => `Burn rate, ${unit} an hour`,
  legend: "Rings: candles. Bar: the mean with its 95 % interval.",
} as const;

/** A mean with its interval, or why it has none. */
const meanWords = ({ mean, interval }: SeenMean, unit: string, none: string): string =>
  interval
    ? `${rough(mean)}${unit}, 95 % interval ${rough(interval[0])} to ${rough(interval[1])}`
    : `${rough(mean)}${unit}, ${none}`;

const NO_INTERVAL = "no interval: it takes two candles that differ";

/** The figures of a wick, each with what it is called. */
export function figuresOf(wick: SeenWick, unit: string): [label: string, text: string][] {
  const { rate, flame, pools, soot, throw: scores, judged, passed, bound, life, surer } = wick;
  return [
    [SEEN.rate, rate ? `${meanWords(rate, ` ${unit} an hour`, NO_INTERVAL)}${alikeWords(wick)}` : SEEN.notRead],
    [SEEN.flame, flame === undefined ? SEEN.notRead : `${rough(flame)} mm`],
    [
      SEEN.pool,
      pools.length === 0
        ? SEEN.noWidth
        : pools.map(({ hour, least, most }) => `${hour} h ${spread(share(least), share(most))} %`).join(", "),
    ],
    [SEEN.soot, soot.length === 0 ? SEEN.notRead : soot.join(", ")],
    ...throwLines(scores),
    [
      SEEN.passed,
      judged === 0 ? "no candle is finished" : [`${passed} of ${judged} judged`, ...boundWords(bound)].join("; "),
    ],
    [SEEN.life, life ? lifeWords(life) : "not known: burn a candle to its end, or write its vessel's water weight"],
    [SEEN.surer, surer],
  ];
}

const boundWords = (bound: number | undefined): string[] =>
  bound === undefined ? [] : [`${atLeast(bound)} % or more of all, at 95 % confidence`];

function throwLines(scores: SeenWick["throw"]): [label: string, text: string][] {
  return scores ? [[SEEN.throw, `${rough(scores.mean)}, mean of ${counted(scores.scores, "score")}`]] : [];
}

const spread = (least: string, most: string): string => (least === most ? least : `${least} to ${most}`);

function alikeWords({ alike, rate }: SeenWick): string {
  if (!rate?.interval) return "";
  return alike.length > 0 ? `; cannot be told from ${list(alike, "and")}` : "";
}

function lifeWords(life: NonNullable<SeenWick["life"]>): string {
  const by =
    life.by === "burnt"
      ? `by ${counted(life.candles, "candle")} burnt until 10 mm of wax were left`
      : `by its fill and the rate of ${counted(life.candles, "candle")}, down to the last of the wax, if it burns on as steadily`;
  return `${meanWords(life, " h", "no interval")}; ${by}`;
}

/** A candle in a line. */
export const candleLine = (
  { test, rate, hours, beyond, remarks, lacks, notes }: SeenWick["candles"][number],
  unit: string,
) =>
  [
    `${test.test}: ${rough(hours)} h burnt`,
    ...(rate === undefined ? [] : [`${rough(rate)} ${unit} an hour`]),
    ...beyond,
    ...remarks,
    ...(beyond.length === 0 ? lacks : []),
    ...(notes.length > 0 ? [`remarks: ${notes.join("; ")}`] : []),
  ].join("; ");

/** The picture in words, for those who do not see it. */
export const pictureWords = (wicks: readonly SeenWick[], unit: string): string =>
  [
    `${SEEN.picture(unit)}.`,
    ...wicks.map(({ wick, rate, candles }) => {
      const rates = candles.flatMap((one) => (one.rate === undefined ? [] : [rough(one.rate)]));
      return `${wick}: ${rate ? `${meanWords(rate, "", "no interval")}; candles ${rates.join(", ")}` : SEEN.notRead}.`;
    }),
  ].join(" ");
