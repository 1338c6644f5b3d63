import { readFileSync } from "node:fs";

export interface Input {
  readonly weights: readonly number[];
  readonly counts: readonly number[];
  readonly capacity: number;
}

/** The 20 problems of tests/data/binpack1.txt, u120_00 first. */
export const u120: readonly Input[] = readFileSync(new URL("../../data/binpack1.txt", import.meta.url), "utf8")
  .split("\n")
  .filter((line) => line !== "" && !line.startsWith("#"))
  .map((line) => line.split(" ").map(Number))
  .map((weights) => ({ weights, counts: weights.map(() => 1), capacity: 150 }));

/** Numbers from 0 to below 1, the same for the same seed (mulberry32). */
export function randomFrom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/**
 * A day in an invented studio: 2 to 30 vessels, up to 500 of each, fills of 40 to 500 g in steps of 0.01 to 5 g,
 * now and then 3 % of loss, and a pot for 3 to 60 candles.
 */
export function someDay(seed: number): Input {
  const random = randomFrom(seed);
  const oneOf = <T>(...list: T[]): T => list[Math.floor(random() * list.length)] as T;
  const most = oneOf(10, 30, 100, 500);
  const [step, melted] = [oneOf(1, 0.1, 0.01, 5), oneOf(1, 1.03)];
  const kinds = 2 + Math.floor(random() * 29);
  const fills = Array.from({ length: kinds }, () => Math.round((40 + 460 * random() ** 1.5) / step) * step);
  const mean = fills.reduce((total, fill) => total + fill) / kinds;
  return {
    weights: fills.map((fill) => fill * melted),
    counts: fills.map(() => 1 + Math.floor(random() * most)),
    capacity: Math.max(Math.round((mean * (3 + 57 * random() ** 2)) / 50) * 50, Math.ceil(Math.max(...fills) * melted)),
  };
}

/** A thousand vessels of 60 to 260 g, 1 to 200 of each, and a pot for so many candles of 200 g. */
export function longTable(seed: number, candlesInPot: number): Input {
  const random = randomFrom(seed);
  const weights = Array.from({ length: 1000 }, () => Math.round(100 + 2000 * random()) / 10 + 50);
  return { weights, counts: weights.map(() => 1 + Math.floor(random() * 200)), capacity: 200 * candlesInPot };
}

/** As many candles in pots of 150 as in the class u of Falkenauer 1994: 20 to 100 of weight, one of each. */
export function uniform(candles: number, seed: number): Input {
  const random = randomFrom(seed);
  const weights = Array.from({ length: candles }, () => 20 + Math.floor(81 * random()));
  return { weights, counts: weights.map(() => 1), capacity: 150 };
}

/** So many different fills of 60 to 400 g in one scent, up to 30 candles of each. */
export function manyFills(fills: number, seed: number): Input {
  const random = randomFrom(seed);
  const weights = new Set<number>();
  while (weights.size < fills) weights.add(Math.round(600 + 3400 * random()) / 10);
  const counts = Array.from(weights, () => 1 + Math.floor(30 * random()));
  return { weights: [...weights], counts, capacity: [2000, 3000, 5000][seed % 3] as number };
}

/** Full pots of three items, as in the triplet class of Falkenauer 1994: hard, for nothing may be wasted. */
export function triplets(seed: number, pots = 40): Input {
  const random = randomFrom(seed);
  const weights = Array.from({ length: pots }, () => {
    const first = 380 + Math.floor(random() * 111);
    const second = 250 + Math.floor(random() * ((1000 - first) / 2 - 249));
    return [first, second, 1000 - first - second];
  }).flat();
  return { weights, counts: weights.map(() => 1), capacity: 1000 };
}

/** Forty full pots of four items: there are too many ways to fill one, and no search ends in time. */
export function fours(seed: number): Input {
  const random = randomFrom(seed);
  const part = (left: number, parts: number) => Math.floor((left / parts) * (0.6 + 0.8 * random()));
  const weights = Array.from({ length: 40 }, () => {
    const first = part(1000, 4);
    const second = part(1000 - first, 3);
    const third = part(1000 - first - second, 2);
    return [first, second, third, 1000 - first - second - third];
  }).flat();
  return { weights, counts: weights.map(() => 1), capacity: 1000 };
}

/** Twelve vessels of an invented studio, fills in grams with 3 % of loss, and a pot of 1.8 kg. */
export const demoDay: Input = {
  weights: [110, 142.5, 168, 180, 198, 227, 260, 285, 312.5, 365, 410, 480].map((fill) => fill * 1.03),
  counts: [48, 36, 60, 24, 24, 40, 18, 36, 24, 12, 16, 12],
  capacity: 1800,
};
