import { list } from "../../core/check/list";
import { plain } from "../../core/check/plain";
import { wholeNumber } from "../../core/check/wholeNumber";
import { wrong } from "../../core/check/wrong";
import { shuffled } from "../../core/statistics/shuffled";
import { sameName } from "../sameName";

/** Minutes of a cycle, and of the break behind it at least: EN 15426 (second-hand). */
export const CYCLE = 240;
export const BREAK = 60;
/** Minutes between two looks at a candle: common practice, no source. */
const LOOK = 60;
/** Two cycles and their break fit into a day of nine hours. */
const CYCLES_A_DAY = 2;
/** Fewer of a wick than this say little: three without a fault leave a fault rate of up to 63 % possible. */
export const FEW = 3;

/** What is to be tried. */
export interface SeriesOrder {
  /** What the names of its tests begin with. */
  readonly code: string;
  readonly vessel: string;
  /** The candidates, by the maker's own words. */
  readonly wicks: readonly string[];
  /** Candles of each wick. */
  readonly candles: number;
  /** Cycles to begin with: a candle burns on until 10 mm of wax are left. */
  readonly cycles: number;
  /** Candles that burn at the same time. */
  readonly atOnce: number;
  /** The day of the pour, as spreadsheets count days. */
  readonly pouredOn: number;
  readonly cureDays: number;
}

/** A candle of a series. */
export interface SeriesCandle {
  readonly test: string;
  readonly wick: string;
  /** The day of its first cycle. */
  readonly burnOn: number;
}

/** A look at a candle that is to be taken. */
export interface SeriesLook {
  readonly test: string;
  readonly cycle: number;
  readonly minutes: number;
}

export interface Series {
  /** In the order in which they are burnt. */
  readonly candles: readonly SeriesCandle[];
  readonly looks: readonly SeriesLook[];
  /** Hours that candles burn, all together, and the days from the first cycle to the last. */
  readonly hours: number;
  readonly days: number;
}

/**
 * Burns each wick once before any is burnt again, in an order that looks like chance and is the same each time: what
 * changes from day to day then falls on all wicks alike.
 */
export function planSeries(order: SeriesOrder): Series {
  const { code, vessel, candles, cycles, atOnce, pouredOn, cureDays } = order;
  const wicks = wicksOf(order.wicks);
  if (vessel.trim() === "") throw wrong("vessel", "nothing is given; choose the vessel to try wicks in");
  if (code.trim() === "") throw wrong("code", "nothing is given; write what the names of the tests begin with");
  for (const [name, value, least, most] of [
    ["candles", candles, 1, 50],
    ["cycles", cycles, 1, 60],
    ["atOnce", atOnce, 1, 200],
    ["cureDays", cureDays, 0, 3650],
  ] as const) {
    within(name, value, least, most);
  }
  const rounds = Array.from({ length: candles }, (_, round) => shuffled(wicks, `${code} ${vessel} ${round}`));
  const inTurn = rounds.flat();
  const digits = String(inTurn.length).length;
  const daysEach = Math.ceil(cycles / CYCLES_A_DAY);
  const burnt = inTurn.map((wick, i): SeriesCandle => {
    const test = `${code.trim()}-${String(i + 1).padStart(digits, "0")}`;
    return { test, wick, burnOn: pouredOn + cureDays + Math.floor(i / atOnce) * daysEach };
  });
  return {
    candles: burnt,
    looks: burnt.flatMap(({ test }) => looksOf(test, cycles)),
    hours: (burnt.length * cycles * CYCLE) / 60,
    days: Math.ceil(burnt.length / atOnce) * daysEach,
  };
}

/** Weighed before it is lit; then looked at each hour until it is put out, and weighed again. */
function looksOf(test: string, cycles: number): SeriesLook[] {
  return Array.from({ length: cycles }, (_, i) => i + 1).flatMap((cycle) =>
    Array.from({ length: CYCLE / LOOK + 1 }, (_, look) => ({ test, cycle, minutes: look * LOOK })),
  );
}

function wicksOf(given: readonly string[]): string[] {
  const wicks = given.map((wick) => wick.trim()).filter((wick) => wick !== "");
  if (wicks.length === 0) throw wrong("wicks", "nothing is given; name the wicks to try");
  const twice = wicks.filter((wick, i) => wicks.findIndex((one) => sameName(one) === sameName(wick)) < i);
  if (twice.length > 0) throw wrong("wicks", `${list(twice, "and")} stands twice; name each wick once`);
  return wicks;
}

function within(name: string, value: number, least: number, most: number): void {
  if (Number.isNaN(wholeNumber(value)) || value < least || value > most) {
    throw wrong(name, `${plain(value)} is no whole number from ${least} to ${most}; write one`);
  }
}
