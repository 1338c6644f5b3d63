import { least } from "../longLists";
import { type Filling, ROOM } from "./filling";

/** Pots times kinds: a table with more is left as it was packed, or it would take longer than the packing. */
const MOST_PLACES = 2_000;
/** A pot with less than this share of its room is nearly empty: so little is hard to weigh out and to keep warm. */
const NEARLY_EMPTY = ROOM / 4;

/**
 * The same candles in as many pots, put together as a person would: each vessel in as few pots as can be had, and no
 * pot nearly empty where another could give it a vessel or share one. Pours every order whole into the pot it fits
 * best, the largest orders or the largest candles first; joins what the given pots hold of one vessel; and takes what
 * splits the fewest orders, the given pots where nothing does better. A heuristic: no source.
 * @param pots what each pot holds, a count for each kind
 * @param sizes of one candle of each kind, as shares of a pot
 */
export function tidyPots(pots: readonly Filling[], sizes: readonly number[]): Filling[] {
  if (pots.length * sizes.length > MOST_PLACES) return [...pots];
  const counts = sizes.map((_, i) => pots.reduce((total, pot) => total + (pot[i] as number), 0));
  const kinds = [...sizes.keys()].filter((i) => (counts[i] as number) > 0);
  const total = (i: number): number => (sizes[i] as number) * (counts[i] as number);
  const orders = [
    [...kinds].sort((a, b) => total(b) - total(a) || a - b),
    [...kinds].sort((a, b) => (sizes[b] as number) - (sizes[a] as number) || a - b),
  ];
  const made = orders.flatMap((order) => {
    const filled = pourWhole(order, sizes, counts, pots.length);
    return filled ? [filled] : [];
  });
  const candidates = [join(pots, sizes), ...made].map((some) => evenOut(balance(some.filter(isFilled), sizes), sizes));
  const [best] = candidates
    .map((some) => ({ some, lines: linesIn(some), least: least(some.map((pot) => weightOf(pot, sizes))) }))
    .sort((a, b) => a.lines - b.lines || b.least - a.least);
  return best?.some ?? [...pots];
}

const isFilled = (pot: Filling): boolean => pot.some((n) => n > 0);

const linesIn = (pots: readonly Filling[]): number =>
  pots.reduce((lines, pot) => lines + pot.filter((n) => n > 0).length, 0);

function weightOf(pot: Filling, sizes: readonly number[]): number {
  let weight = 0;
  for (let i = 0; i < pot.length; i++) weight += (pot[i] as number) * (sizes[i] as number);
  return weight;
}

/** Kinds poured one after the other, each whole into the pot that it fills best, or split; undefined if some are left. */
function pourWhole(
  order: readonly number[],
  sizes: readonly number[],
  counts: readonly number[],
  potCount: number,
): number[][] | undefined {
  const pots = Array.from({ length: potCount }, () => sizes.map(() => 0));
  const rooms = pots.map(() => ROOM);
  for (const i of order) {
    const size = sizes[i] as number;
    for (let left = counts[i] as number; left > 0; ) {
      const whole = left * size;
      // The fullest of the pots that take it whole, else the emptiest.
      let at = 0;
      for (const [p, room] of rooms.entries()) {
        const best = rooms[at] as number;
        if (room >= whole ? best < whole || room < best : best < whole && room > best) at = p;
      }
      const n = Math.min(left, Math.floor((rooms[at] as number) / size));
      if (n === 0) return undefined;
      (pots[at] as number[])[i] = ((pots[at] as number[])[i] as number) + n;
      rooms[at] = ROOM - weightOf(pots[at] as number[], sizes);
      left -= n;
    }
  }
  return pots;
}

/** Joins candles of one kind where the pot of some has room for those of another pot. */
function join(pots: readonly Filling[], sizes: readonly number[]): number[][] {
  const joined = pots.map((pot) => [...pot]);
  const weights = joined.map((pot) => weightOf(pot, sizes));
  for (const i of sizes.keys()) {
    const held = (p: number): number => joined[p]?.[i] as number;
    const move = (from: number, to: number): void => {
      const [give, take] = [joined[from] as number[], joined[to] as number[]];
      take[i] = held(from) + held(to);
      give[i] = 0;
      for (const p of [from, to]) weights[p] = weightOf(joined[p] as number[], sizes);
    };
    const holding = [...joined.keys()].filter((p) => held(p) > 0).sort((a, b) => held(a) - held(b));
    for (const from of holding) {
      const weight = held(from) * (sizes[i] as number);
      const to = holding.find((p) => p !== from && held(p) > 0 && (weights[p] as number) + weight <= ROOM);
      if (to !== undefined) move(from, to);
    }
  }
  return joined;
}

/** Moves whole orders to the emptiest pot as long as that leaves no pot emptier than it was. */
function balance(pots: readonly Filling[], sizes: readonly number[]): number[][] {
  const moved = pots.map((pot) => [...pot]);
  for (let turns = pots.length; turns > 0; turns--) {
    const weights = moved.map((pot) => weightOf(pot, sizes));
    const to = weights.indexOf(least(weights));
    let [from, kind, best] = [-1, -1, weights[to] as number];
    for (const [p, pot] of moved.entries()) {
      for (const [i, n] of pot.entries()) {
        const weight = n * (sizes[i] as number);
        const least = Math.min((weights[p] as number) - weight, (weights[to] as number) + weight);
        if (p === to || n === 0 || (weights[to] as number) + weight > ROOM || least <= best + 1e-9) continue;
        [from, kind, best] = [p, i, least];
      }
    }
    if (from < 0) break;
    const [give, take] = [moved[from] as number[], moved[to] as number[]];
    take[kind] = (take[kind] as number) + (give[kind] as number);
    give[kind] = 0;
  }
  return moved;
}

/** Gives a nearly empty pot candles of a kind that it holds already from the pot that can give the most of them. */
function evenOut(pots: readonly Filling[], sizes: readonly number[]): Filling[] {
  const weights = pots.map((pot) => weightOf(pot, sizes));
  const to = weights.indexOf(least(weights));
  const weight = weights[to] as number;
  if (!(weight < NEARLY_EMPTY)) return [...pots];
  let [from, kind, count] = [-1, -1, 0];
  for (const [p, pot] of pots.entries()) {
    for (const [i, n] of pot.entries()) {
      const size = sizes[i] as number;
      if (p === to || n === 0 || pots[to]?.[i] === 0) continue;
      // Half of what the one holds more than the other: with it they are as full as each other.
      const some = Math.min(n - 1, Math.floor(((weights[p] as number) - weight) / (2 * size)));
      if (some * size > count * (sizes[kind] ?? 0)) [from, kind, count] = [p, i, some];
    }
  }
  const moved = (pot: Filling, by: number) => pot.map((n, i) => (i === kind ? n + by : n));
  return pots.map((pot, p) => (p === from ? moved(pot, -count) : p === to ? moved(pot, count) : pot));
}
