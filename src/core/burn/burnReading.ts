import { atLeastZero } from "../check/atLeastZero";
import { plain } from "../check/plain";
import { largest, least } from "../longLists";

/** What was read of one candle at one time, lengths in one unit. What was not looked at is undefined. */
export interface BurnReading {
  /** From 1. */
  readonly cycle: number;
  /** Since this cycle began. */
  readonly minutes: number;
  /** Height of the flame. */
  readonly flame?: number | undefined;
  /** Diameter of the melt pool. */
  readonly pool?: number | undefined;
  /** Wax left from the surface down. */
  readonly depth?: number | undefined;
  /** Soot index an hour, or what was seen in words: `none`, or anything else. */
  readonly soot?: number | string | undefined;
  /** Glass temperature: of the vessel outside at its hottest, whatever it is made of. */
  readonly glass?: number | undefined;
  /** Of the candle with its vessel, in one unit of weight. It says what burnt, and nothing that is judged. */
  readonly weight?: number | undefined;
}

/** Whether a look says anything of what is judged. */
export const saysSomething = ({
  flame,
  pool,
  depth,
  soot,
  glass,
}: Omit<BurnReading, "cycle" | "minutes" | "weight">): boolean =>
  [flame, pool, depth, soot, glass].some((value) => value !== undefined);

/** Millimetres of wax left at the end: EN 15426. */
export const LEFT = 10;
export const RULER = 1; // millimetre that wax left may seem to rise: as well as a ruler reads it
const LONGEST_UNSEEN = 90; // minutes: looked at each hour, half an hour either way; common practice, no source

/** Whether no more wax was left than a burn ends with. */
export const isBurntDown = ({ depth }: Pick<BurnReading, "depth">, millimetres: number): boolean =>
  depth !== undefined && Number((depth * millimetres).toPrecision(12)) <= LEFT;

/** What must be read or done before a candle says anything by its silence. */
export function unreadIn(readings: readonly BurnReading[], millimetres: number): string[] {
  const burning = readings.filter(({ minutes }) => minutes > 0);
  const lit = burning.filter(saysSomething);
  const unread = (["flame", "pool"] as const).flatMap((what) => {
    const at = lit.find((reading) => reading[what] === undefined);
    return at ? [`no ${what} read in cycle ${at.cycle} at ${plain(at.minutes)} min`] : [];
  });
  const cycles = byCycle(lit);
  const last = largest([...readings.filter(saysSomething), ...burning].map(({ cycle }) => cycle));
  const unseen = firstUnseen(cycles, byCycle(burning), last);
  const never = (["soot", "glass"] as const).flatMap((what) => {
    const without = [...cycles].filter(([, own]) => own.every((one) => one[what] === undefined)).map(([at]) => at);
    if (without.length === 0) return [];
    return [`${what === "soot" ? "soot" : "glass temperature"} not read in cycle ${plain(least(without))}`];
  });
  return [...unread, ...(unseen === undefined ? [] : [unseen]), ...never, ...depthLeft(readings, millimetres)];
}

function byCycle(readings: readonly BurnReading[]): ReadonlyMap<number, readonly BurnReading[]> {
  const cycles = new Map<number, BurnReading[]>();
  for (const one of readings) {
    const own = cycles.get(one.cycle) ?? [];
    cycles.set(one.cycle, own);
    own.push(one);
  }
  return cycles;
}

/**
 * The first stretch in which nobody looked; a cycle that is not there ends the search, however many are counted.
 * @param burning those that say nothing too: a candle that was only weighed had burnt all the same
 */
function firstUnseen(
  cycles: ReturnType<typeof byCycle>,
  burning: ReturnType<typeof byCycle>,
  last: number,
): string | undefined {
  for (let cycle = 1; cycle <= last; cycle++) {
    const [unseen] = unseenIn(cycles.get(cycle) ?? [], burning.get(cycle) ?? [], cycle);
    if (unseen !== undefined) return unseen;
  }
  return undefined;
}

/** The stretches of a cycle in which nobody looked at the candle for more than an hour and a half. */
function unseenIn(lit: readonly BurnReading[], burning: readonly BurnReading[], cycle: number): string[] {
  if (lit.length === 0) return [`cycle ${plain(cycle)} never looked at`];
  const end = largest(burning.map((one) => one.minutes));
  const minutes = [0, ...lit.map((one) => one.minutes), end].sort((a, b) => a - b);
  return minutes.flatMap((at, i) => {
    const before = minutes[i - 1] ?? at;
    if (at - before <= LONGEST_UNSEEN) return [];
    return [`cycle ${plain(cycle)} not looked at between ${plain(before)} and ${plain(at)} min`];
  });
}

function depthLeft(readings: readonly BurnReading[], millimetres: number): string[] {
  const depths = depthsIn(readings, millimetres);
  if (depths.length === 0) return [`the depth of wax left never read; burn down to ${LEFT} mm`];
  const least = Math.min(...depths);
  return [...riseIn(depths), ...(least > LEFT ? [`${plain(least)} mm of wax left; burn down to ${LEFT} mm`] : [])];
}

/** Millimetres of wax left, in the order of the burn; of looks at one time none is the later one. */
export const depthsIn = (readings: readonly BurnReading[], millimetres: number): number[] =>
  readings
    .flatMap(({ depth, ...place }) =>
      depth === undefined
        ? []
        : [{ ...place, depth: Number((atLeastZero("depths", depth) * millimetres).toPrecision(12)) }],
    )
    .sort((a, b) => a.cycle - b.cycle || a.minutes - b.minutes || b.depth - a.depth)
    .map(({ depth }) => depth);

/** The first that is above one before it, in words: one of the two is wrong. */
export function riseIn(depths: readonly number[]): string[] {
  let lowest = Number.POSITIVE_INFINITY;
  for (const depth of depths) {
    if (depth > lowest + RULER) return [`wax left rises from ${lowest} to ${depth} mm; check both`];
    lowest = Math.min(lowest, depth);
  }
  return [];
}
