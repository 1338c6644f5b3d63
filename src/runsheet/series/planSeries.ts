import { list } from "../../core/check/list";
import { plain } from "../../core/check/plain";
import { wholeNumber } from "../../core/check/wholeNumber";
import { wrong } from "../../core/check/wrong";
import { Fault } from "../../core/fault";
import { shuffled } from "../../core/statistics/shuffled";
import { sameName } from "../sameName";

/** Minutes of a cycle, and of the break behind it at least: EN 15426 (second-hand). */
export const CYCLE = 240;
export const BREAK = 60;
/** Minutes between two looks at a candle: common practice, no source. */
const LOOK = 60;
/** Two cycles and their break fit into a day of nine hours. */
const CYCLES_A_DAY = 2;
/** Fewer of a wick than this say little: three without a fault leave a fault rate of up to 64 % possible. */
export const FEW = 3;
/** More looks than this make tables and cards that nobody fills in. */
const MOST_LOOKS = 6000;

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
  /** Hours that candles burn, all together, and those that somebody stays with them. */
  readonly hours: number;
  readonly watched: number;
  /** The day of the first cycle and that of the last, and how many these are. */
  readonly firstDay: number;
  readonly lastDay: number;
  readonly days: number;
}

/**
 * Burns each wick once before any is burnt again, in an order that looks like chance and is the same each time: what
 * changes from day to day then falls on all wicks alike.
 */
export function planSeries(order: SeriesOrder): Series {
  const [fault] = seriesFaults(order);
  if (fault) throw fault;
  const { vessel, candles, cycles, atOnce, pouredOn, cureDays } = order;
  const [code, wicks] = [order.code.trim(), namedWicks(order.wicks)];
  const rounds = Array.from({ length: candles }, (_, round) => shuffled(wicks, `${code} ${vessel} ${round}`));
  const inTurn = rounds.flat();
  const digits = String(inTurn.length).length;
  const daysEach = Math.ceil(cycles / CYCLES_A_DAY);
  const firstDay = pouredOn + cureDays;
  const burnt = inTurn.map((wick, i): SeriesCandle => {
    const test = `${code}-${String(i + 1).padStart(digits, "0")}`;
    return { test, wick, burnOn: firstDay + Math.floor(i / atOnce) * daysEach };
  });
  const groups = Math.ceil(burnt.length / atOnce);
  return {
    candles: burnt,
    looks: burnt.flatMap(({ test }) => looksOf(test, cycles)),
    hours: (burnt.length * cycles * CYCLE) / 60,
    watched: (groups * cycles * CYCLE) / 60,
    ...{ firstDay, lastDay: firstDay + groups * daysEach - 1, days: groups * daysEach },
  };
}

/** All that is wrong with an order, by its fields. */
export function seriesFaults(order: SeriesOrder): Fault[] {
  const found = [
    () => wicksOf(order.wicks),
    () => named("vessel", order.vessel, "choose the vessel to try wicks in"),
    () => named("code", order.code, "write what the names of the tests begin with"),
    () => within("candles", order.candles, 1, 50),
    () => within("cycles", order.cycles, 1, 60),
    () => within("atOnce", order.atOnce, 1, 200),
    () => within("cureDays", order.cureDays, 0, 3650),
  ].flatMap(faultOf);
  return found.length > 0 ? found : faultOf(() => notTooMany(order));
}

function faultOf(check: () => void): Fault[] {
  try {
    check();
    return [];
  } catch (fault) {
    if (fault instanceof Fault) return [fault];
    throw fault;
  }
}

function notTooMany({ wicks, candles, cycles }: SeriesOrder): void {
  const looks = namedWicks(wicks).length * candles * cycles * (CYCLE / LOOK + 1);
  if (looks <= MOST_LOOKS) return;
  throw wrong(
    "wicks",
    `that makes ${looks} readings, more than ${MOST_LOOKS}; plan a series of fewer candles or cycles`,
  );
}

/** Weighed before it is lit; then looked at each hour until it is put out, and weighed again. */
function looksOf(test: string, cycles: number): SeriesLook[] {
  return Array.from({ length: cycles }, (_, i) => i + 1).flatMap((cycle) =>
    Array.from({ length: CYCLE / LOOK + 1 }, (_, look) => ({ test, cycle, minutes: look * LOOK })),
  );
}

const namedWicks = (given: readonly string[]): string[] =>
  given.map((wick) => wick.trim()).filter((wick) => wick !== "");

function wicksOf(given: readonly string[]): void {
  const wicks = namedWicks(given);
  if (wicks.length === 0) throw wrong("wicks", "nothing is given; name the wicks to try");
  const twice = wicks.filter((wick, i) => wicks.findIndex((one) => sameName(one) === sameName(wick)) < i);
  if (twice.length > 0) throw wrong("wicks", `${list(twice, "and")} stands twice; name each wick once`);
}

function named(name: string, text: string, what: string): void {
  if (text.trim() === "") throw wrong(name, `nothing is given; ${what}`);
}

function within(name: string, value: number, least: number, most: number): void {
  if (Number.isNaN(wholeNumber(value)) || value < least || value > most) {
    throw wrong(name, `${plain(value)} is no whole number from ${least} to ${most}; write one`);
  }
}
