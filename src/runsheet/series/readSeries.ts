import { passBound } from "../../core/burn/passBound";
import { wickCompare } from "../../core/burn/wickCompare";
import { Fault } from "../../core/fault";
import { atMost } from "../percent";
import { sameName } from "../sameName";
import { isFinished, type SeenCandle, seenCandle } from "../seenCandle";
import type { BurnTest, BurnTests } from "../tables/burnTests";
import type { Readings } from "../tables/readings";
import { burntShareWords } from "./burntShare";
import { FEW } from "./planSeries";
import { type SeenFigures, type SeenMean, seenFigures } from "./seenFigures";
import {
  ANOTHER_WICK,
  asText,
  beyondIn,
  burnMore,
  couldStill,
  finish,
  nothingBeyond,
  nothingYet,
  toLookAt,
} from "./verdictWords";

/** What was seen of a wick in a series. */
export interface SeenWick extends SeenFigures {
  readonly wick: string;
  readonly candles: readonly SeenCandle[];
  /** Candles that were burnt and read to their end or showed something beyond, and those without anything beyond. */
  readonly judged: number;
  readonly passed: number;
  /** Mean weight lost an hour. */
  readonly rate: SeenMean | undefined;
  /** The wicks whose rate it cannot be told from. */
  readonly alike: readonly string[];
  /** The lowest pass rate that its candles leave possible; undefined while none passed, for then it is 0. */
  readonly bound: number | undefined;
  /** What is asked because its figures do not agree. */
  readonly contradictions: readonly string[];
  /** What was seen, in words; it never says safe. */
  readonly verdict: string;
  /** What would make it surer. */
  readonly surer: string;
}

/** The candles of one vessel, wax, scent, load, cure and product: what they show of wicks may be compared. */
export function seriesOf(tests: BurnTests): BurnTest[][] {
  const found = new Map<string, BurnTest[]>();
  for (const test of tests.values()) {
    const { vessel, wax, scent, load, basis, cureDays, product } = test;
    const key = JSON.stringify([vessel, wax, scent, product].map(sameName).concat(`${load} ${basis} ${cureDays}`));
    const own = found.get(key) ?? [];
    found.set(key, own);
    own.push(test);
  }
  return [...found.values()];
}

/**
 * What a series shows of each of its wicks, in the order in which they come.
 * @param fill wax and scent of one candle together, in the unit of the weights, where it is known
 */
export function readSeries(tests: readonly BurnTest[], readings: Readings, fill?: number): SeenWick[] {
  const seen = tests.map((test) => seenCandle(test, readings.get(sameName(test.test)) ?? []));
  const rated = seen.flatMap(({ test, rate }) => (rate === undefined ? [] : [{ wick: test.wick, value: rate }]));
  const compared = rated.length > 0 ? wickCompare(rated, sameName) : [];
  const wicks = new Map<string, SeenCandle[]>();
  for (const one of seen) wicks.set(sameName(one.test.wick), [...(wicks.get(sameName(one.test.wick)) ?? []), one]);
  return [...wicks].map(([key, candles]): SeenWick => {
    const rates = compared.find(({ wick }) => sameName(wick) === key);
    const done = candles.filter(isJudged);
    const passed = done.filter(({ beyond }) => beyond.length === 0).length;
    const { wick } = (candles[0] as SeenCandle).test;
    const rate = rates && {
      mean: rates.mean,
      interval: rates.interval instanceof Fault ? undefined : rates.interval,
    };
    const figures = seenFigures(candles, rate && { ...rate, candles: rates.count }, fill);
    const contradictions = burntShareWords(candles, fill);
    return {
      ...{ wick, candles, judged: done.length, passed, rate, alike: rates?.alike ?? [] },
      bound: passed > 0 ? passBound(passed, done.length) : undefined,
      ...{ ...figures, contradictions },
      verdict: [verdictOf(candles, done.length, passed), ...contradictions].join("; "),
      surer: surerOf(wick, candles, passed),
    };
  });
}

/** A candle that showed something beyond needs no more to say so. */
const isJudged = (one: SeenCandle): boolean => one.beyond.length > 0 || isFinished(one);

/** What the maker wrote beside the readings: nobody else reads it. */
export function noteWords(candles: readonly SeenCandle[]): string[] {
  const notes = candles.flatMap((one) => one.notes.map((note) => `${one.test.test}, ${note}`));
  if (notes.length === 0) return [];
  const more = notes.length > 1 ? ` (and ${notes.length - 1} more)` : "";
  return [`the maker's remarks: ${notes[0]}${more}: read ${notes.length > 1 ? "them" : "it"} first`];
}

const verdictOf = (candles: readonly SeenCandle[], judged: number, passed: number): string =>
  [seenWords(candles, judged, passed), ...noteWords(candles)].join("; ");

function seenWords(candles: readonly SeenCandle[], judged: number, passed: number): string {
  const failed = candles.filter(({ beyond }) => beyond.length > 0);
  const [first] = failed;
  if (first) return beyondIn(asText, failed.length, candles.length, `${first.test.test}, ${first.beyond[0]}`);
  const open = candles.find((one) => !isJudged(one));
  if (passed === 0) return nothingYet(asText, `${open?.test.test}, ${open?.lacks[0]}`);
  const most = atMost(1 - passBound(passed, judged));
  const remarked = candles.filter(({ remarks }) => remarks.length > 0);
  const [look] = remarked;
  const looks = look ? toLookAt(asText, remarked.length, `${look.test.test}, ${look.remarks[0]}`) : "";
  const seen = `${nothingBeyond(asText, passed, most)}${looks}`;
  return open ? `${seen}; ${open.test.test} is not finished: ${open.lacks[0]}` : seen;
}

/** How many more candles would tell more, and what they would tell. */
function surerOf(wick: string, candles: readonly SeenCandle[], passed: number): string {
  if (candles.some(({ beyond }) => beyond.length > 0)) return ANOTHER_WICK;
  const open = candles.filter((one) => !isJudged(one)).length;
  const all = passed + open;
  const plural = (count: number): string => (count === 1 ? " candle" : " candles");
  const more = all < FEW ? FEW - all : open > 0 ? 0 : all;
  const most = atMost(1 - passBound(all + more, all + more));
  const steps = [
    ...(open > 0 ? [finish(asText, open, plural(open))] : []),
    ...(more > 0 ? [burnMore(asText, more, plural(more), wick)] : []),
  ];
  return `${steps.join(", then ")}${couldStill(asText, most)}`;
}
