import { type BurnFindings, burnFindings } from "../core/burn/burnFindings";
import { burnRate } from "../core/burn/burnRate";
import { type BurnReading, depthsIn, isBurntDown, riseIn, saysSomething } from "../core/burn/burnReading";
import { NOTHING_READ } from "../core/burn/openings";
import { plain } from "../core/check/plain";
import { Fault } from "../core/fault";
import { largest, least } from "../core/longLists";
import { isError, type Problem } from "./problem";
import type { BurnTest } from "./tables/burnTests";
import type { TestReading } from "./tables/readings";

/** What was seen of one candle. */
export interface SeenCandle extends BurnFindings {
  readonly test: BurnTest;
  /** Weight lost an hour; undefined while it cannot be told. */
  readonly rate: number | undefined;
  /** Hours it has burnt, all cycles together. */
  readonly hours: number;
  /** The highest flame in mm; undefined while none was read. */
  readonly flame: number | undefined;
  /** Its melt pools, each as a share of the inside width, at the full hour of a cycle that is nearest. */
  readonly pools: readonly { readonly hour: number; readonly share: number }[];
  /** What was read of soot, as it was written. */
  readonly soot: readonly string[];
  /** The scores of its throw. */
  readonly throws: readonly number[];
  /** Hours it had burnt when no more wax was left than a burn ends with; undefined while more is. */
  readonly end: number | undefined;
  /** What the maker remarked of it, each with its place in the burn. */
  readonly notes: readonly string[];
  /** What cannot be read, in its row or its readings. */
  readonly wrong: readonly Problem[];
}

/** A reading whose place in the burn is known. */
type Placed = TestReading & BurnReading;

export function seenCandle(test: BurnTest, readings: readonly TestReading[]): SeenCandle {
  // Rows that were made for looks not yet taken say nothing.
  const seen = readings.filter((one) => isTaken(one) || one.wrong.length > 0);
  const taken = seen.filter(isPlaced);
  const burnt = hoursBurnt(taken);
  const flames = taken.flatMap(({ flame }) => flame ?? []);
  const wrong = [...test.wrong, ...seen.flatMap((one) => one.wrong)];
  const found = findingsOf(test, taken);
  return {
    test,
    ...found,
    lacks: [...unreadable(wrong, seen.length - taken.length), ...weightRise(taken, burnt), ...found.lacks],
    rate: rateOf(taken, burnt),
    hours: taken.reduce((most, one) => Math.max(most, burnt(one)), 0),
    flame: flames.length > 0 ? largest(flames) : undefined,
    pools: poolsOf(taken, test.width),
    soot: taken.flatMap(({ soot }) => (soot === undefined ? [] : [typeof soot === "number" ? plain(soot) : soot])),
    throws: taken.flatMap((one) => one.throw ?? []),
    end: endOf(taken, burnt),
    notes: seen.flatMap(noteIn),
    wrong,
  };
}

/** Whether a candle was burnt and read to its end: until then its silence says nothing. */
export const isFinished = ({ lacks }: Pick<SeenCandle, "lacks">): boolean => lacks.length === 0;

const placeOf = ({ cycle, minutes }: Placed): string => `cycle ${cycle} at ${plain(minutes)} min`;
const isPlaced = (one: TestReading): one is Placed => one.cycle !== undefined && one.minutes !== undefined;
const noteIn = (one: TestReading): string[] =>
  one.remarks === "" ? [] : [isPlaced(one) ? `${placeOf(one)}: ${one.remarks}` : one.remarks];

/** Whether anybody looked at the candle, or weighed it. */
const isTaken = ({ weight, poolDepth, throw: score, remarks, ...one }: TestReading): boolean =>
  remarks !== "" || [weight, poolDepth, score].some((value) => value !== undefined) || saysSomething(one);

/** Whether a candle was lit, by its readings. */
export const wasLit = (readings: readonly TestReading[]): boolean =>
  readings.some((one) => isTaken(one) && (one.minutes ?? 1) > 0);

/** What may say something, and is not read: the candle may not pass by it. */
function unreadable(wrong: readonly Problem[], unplaced: number): string[] {
  const errors = wrong.filter(isError);
  const [first] = errors;
  if (first) return [`${first.text}${errors.length > 1 ? ` (and ${errors.length - 1} more)` : ""}`];
  return unplaced > 0 ? ["a reading lacks its cycle or its minutes; fill them in"] : [];
}

function findingsOf({ width, product }: BurnTest, taken: readonly Placed[]): BurnFindings {
  const nothing = { beyond: [], remarks: [], ends: false };
  if (!taken.some(saysSomething)) return { ...nothing, lacks: [NOTHING_READ] };
  try {
    return burnFindings(taken, width, "mm", "C", product, taken[0]?.weightUnit);
  } catch (fault) {
    if (!(fault instanceof Fault)) throw fault;
    return { ...nothing, lacks: [fault.message] };
  }
}

/** The hours burnt at a reading: the cycles before it, each as long as it was looked at, and its own minutes. */
function hoursBurnt(taken: readonly Placed[]): (one: Placed) => number {
  const longest = new Map<number, number>();
  for (const { cycle, minutes } of taken) longest.set(cycle, Math.max(longest.get(cycle) ?? 0, minutes));
  return ({ cycle, minutes }) => {
    const before = [...longest].filter(([other]) => other < cycle).reduce((sum, [, most]) => sum + most, 0);
    return (before + minutes) / 60;
  };
}

/**
 * A weight above one of when it had burnt less: one of the two is wrong. As much burnt they may differ by what a scale
 * is out.
 */
function weightRise(taken: readonly Placed[], burnt: (one: Placed) => number): string[] {
  const weighed = taken.filter((one): one is Placed & { weight: number } => one.weight !== undefined);
  for (const later of weighed) {
    const before = weighed.find((one) => burnt(one) < burnt(later) && one.weight < later.weight);
    if (!before) continue;
    const [from, to] = [before, later].map((one) => `${plain(Number(one.weight.toPrecision(8)))} (${placeOf(one)})`);
    return [`its weight rises from ${from} to ${to}; check both`];
  }
  return [];
}

/** A cycle that was burnt and not looked at: how long it burnt nobody knows. */
const hasGap = (taken: readonly Placed[]): boolean => {
  const last = taken.reduce((most, { cycle }) => Math.max(most, cycle), 0);
  const lit = new Set(taken.flatMap(({ cycle, minutes }) => (minutes > 0 && cycle < last ? [cycle] : [])));
  return lit.size < last - 1;
};

function rateOf(taken: readonly Placed[], burnt: (one: Placed) => number): number | undefined {
  if (hasGap(taken) || weightRise(taken, burnt).length > 0) return undefined;
  const weighed = taken.flatMap((one) => (one.weight === undefined ? [] : [{ hours: burnt(one), weight: one.weight }]));
  try {
    const rate = burnRate(weighed);
    return rate > 0 ? rate : undefined;
  } catch (fault) {
    if (!(fault instanceof Fault)) throw fault;
    return undefined;
  }
}

/** Half an hour belongs to the first full one: each look is taken for that of its hour. */
function poolsOf(taken: readonly Placed[], width: number | undefined): SeenCandle["pools"] {
  if (width === undefined || !(width > 0)) return [];
  return taken.flatMap(({ minutes, pool }) => {
    const hour = Math.round(minutes / 60);
    return hour < 1 || pool === undefined ? [] : [{ hour, share: pool / width }];
  });
}

function endOf(taken: readonly Placed[], burnt: (one: Placed) => number): number | undefined {
  if (hasGap(taken) || riseIn(depthsIn(taken, 1)).length > 0) return undefined;
  const ended = taken.filter((one) => isBurntDown(one, 1));
  return ended.length > 0 ? least(ended.map(burnt)) : undefined;
}
