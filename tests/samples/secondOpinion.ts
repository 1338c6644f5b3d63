/**
 * The statistics of a burn-test series once more, written without the core: by a general spreadsheet engine where it
 * has a function, else by counting out and by halving.
 */

import { engineSum, inFormula } from "../core/burn/engineSum";

export const meanOf = (values: readonly number[]): number => values.reduce((sum, one) => sum + one, 0) / values.length;

/** Rates by the wick of their candle. */
export type Rates = ReadonlyMap<string, readonly number[]>;

/** The ends of the 95 % interval of a mean, by Student's t. */
export function meanInterval(values: readonly number[]): [number, number] {
  const half = engineSum(`=CONFIDENCE.T(0.05, STDEV.S(${inFormula(values)}), ${values.length})`);
  return [meanOf(values) - half, meanOf(values) + half];
}

/** The pairs of wicks that Welch's test, adjusted by Holm, tells apart at 5 %, each as one text. */
export function toldApart(rates: Rates): Set<string> {
  const wicks = [...rates.keys()];
  const pairs = wicks.flatMap((one, i) => wicks.slice(i + 1).map((other) => [one, other] as const));
  const tested = pairs
    .map(([one, other]) => {
      const [a, b] = [one, other].map((wick) => inFormula(rates.get(wick) as readonly number[]));
      return { one, other, p: engineSum(`=T.TEST(${a}, ${b}, 2, 3)`) };
    })
    .sort((a, b) => a.p - b.p);
  const told = new Set<string>();
  // From the smallest on, each against 5 % shared by those that are left; the first that fails ends it.
  for (const [i, { one, other, p }] of tested.entries()) {
    if (p * (tested.length - i) > 0.05) break;
    told.add(`${one} ${other}`).add(`${other} ${one}`);
  }
  return told;
}

/** Where the line through these points gives a value, and where its 95 % band does. */
export function sizeAt(points: readonly (readonly [size: number, rate: number])[], wanted: number): number[] {
  const [xs, ys] = [0, 1].map((i) => inFormula(points.map((point) => point[i] as number)));
  const of = (formula: string): number => engineSum(`=${formula}`);
  const [slope, steyx, middle, squares] = [
    of(`SLOPE(${ys},${xs})`),
    of(`STEYX(${ys},${xs})`),
    of(`AVERAGE(${xs})`),
    of(`DEVSQ(${xs})`),
  ] as const;
  const height = of(`AVERAGE(${ys})`);
  const t = of(`T.INV.2T(0.05,${points.length - 2})`);
  return [0, 1, -1].map((side) => {
    let [low, high] = [-50, 50];
    for (let i = 0; i < 100; i++) {
      const x = (low + high) / 2;
      const band = t * steyx * Math.sqrt(1 / points.length + (x - middle) ** 2 / squares);
      if (height + slope * (x - middle) + side * band < wanted) low = x;
      else high = x;
    }
    return low;
  });
}

/** How likely at least so many of all pass, each with this chance: counted out. */
export function atLeast(passed: number, tried: number, chance: number): number {
  let sum = 0;
  for (let k = passed; k <= tried; k++) {
    let ways = 1;
    for (let i = 0; i < k; i++) ways = (ways * (tried - i)) / (i + 1);
    sum += ways * chance ** k * (1 - chance) ** (tried - k);
  }
  return sum;
}

/** The chance at which so many passes, or more, are as rare as 5 %. */
export function lowestPassRate(passed: number, tried: number): number {
  let [low, high] = [0, 1];
  for (let i = 0; i < 100 && passed > 0; i++) {
    const middle = (low + high) / 2;
    if (atLeast(passed, tried, middle) < 0.05) low = middle;
    else high = middle;
  }
  return low;
}

/** The two-sided sign test: of all ways in which so many differences can fall, those at least as one-sided. */
export function signTest(differences: readonly number[]): number {
  const signs = differences.filter((one) => one !== 0).map(Math.sign);
  const lean = Math.abs(signs.reduce((sum, one) => sum + one, 0));
  let asOneSided = 0;
  for (let way = 0; way < 2 ** signs.length; way++) {
    let balance = 0;
    for (let i = 0; i < signs.length; i++) balance += (way >> i) & 1 ? 1 : -1;
    if (Math.abs(balance) >= lean) asOneSided++;
  }
  return asOneSided / 2 ** signs.length;
}
