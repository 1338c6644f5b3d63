import { wrong } from "../check/wrong";
import { Fault } from "../fault";
import { deviation } from "../statistics/deviation";
import { holm } from "../statistics/holm";
import { studentT } from "../statistics/studentT";
import { welch } from "../statistics/welch";

/** What one candle showed. */
export interface Tried<N> {
  readonly wick: N;
  readonly value: number;
}

export interface ComparedWick<N> {
  readonly wick: N;
  readonly count: number;
  /** The ends of its 95 % interval; a fault for a wick with one candle, or whose candles do not differ at all. */
  readonly mean: number;
  readonly interval: readonly [lower: number, upper: number] | Fault;
  /** The other wicks whose mean may be the same, of those with candles that differ. */
  readonly alike: readonly N[];
}

const DOUBT = 0.05;
const MOST = 100;

/**
 * The wicks of a series side by side, in the order in which they come. The interval of a mean is Student's t of its own
 * candles; two wicks are told apart where Welch's p, adjusted by Holm for all pairs, is at most 5 %.
 * @param tried one or more candles, of at most 100 wicks
 * @param keyOf what makes two names one
 */
export function wickCompare<N>(tried: readonly Tried<N>[], keyOf: (wick: N) => unknown): ComparedWick<N>[] {
  if (tried.length === 0) throw new Fault("none", "wicks", "no candle has a wick and a value");
  const groups = groupsOf(tried, keyOf);
  if (groups.length > MOST) throw wrong("wicks", `${groups.length} different wicks; compare at most ${MOST} at once`);
  const told = toldApart(groups);
  return groups.map(({ wick, values }) => ({
    wick,
    count: values.length,
    mean: deviation(values).mean,
    interval: intervalOf(values),
    alike: differ(values)
      ? groups
          .filter((other) => other.wick !== wick && differ(other.values) && !told(wick, other.wick))
          .map((other) => other.wick)
      : [],
  }));
}

interface Group<N> {
  readonly wick: N;
  readonly values: number[];
}

function groupsOf<N>(tried: readonly Tried<N>[], keyOf: (wick: N) => unknown): Group<N>[] {
  const groups = new Map<unknown, Group<N>>();
  for (const { wick, value } of tried) {
    const key = keyOf(wick);
    const group = groups.get(key);
    if (group) group.values.push(value);
    else groups.set(key, { wick, values: [value] });
  }
  return [...groups.values()];
}

/** Whether candles show by how much they differ, which one alone does not. */
const differ = (values: readonly number[]): boolean => values.some((value) => value !== values[0]);

function intervalOf(values: readonly number[]): readonly [number, number] | Fault {
  if (values.length < 2) return new Fault("none", "", "one candle says nothing of the next; burn 3 or more");
  // No two candles burn alike to the last digit: the scale, or the rounding, was too coarse to show it.
  if (!differ(values)) {
    return new Fault("none", "", `${values.length} candles show the very same; weigh or round more finely`);
  }
  const { mean, deviation: spread } = deviation(values);
  const half = (studentT(values.length - 1) * spread) / Math.sqrt(values.length);
  return [mean - half, mean + half];
}

/** Whether two wicks are told apart. */
function toldApart<N>(groups: readonly Group<N>[]): (first: N, second: N) => boolean {
  const several = groups.filter(({ values }) => differ(values));
  const pairs = several.flatMap((first, i) => several.slice(i + 1).map((second) => [first, second] as const));
  const ps = holm(pairs.map(([first, second]) => welch(first.values, second.values)));
  const told = new Map(groups.map(({ wick }) => [wick, new Set<N>()]));
  for (const [i, [first, second]] of pairs.entries()) {
    if ((ps[i] as number) > DOUBT) continue;
    told.get(first.wick)?.add(second.wick);
    told.get(second.wick)?.add(first.wick);
  }
  return (first, second) => (told.get(first) as Set<N>).has(second);
}
