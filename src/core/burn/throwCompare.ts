import { confidence } from "../check/confidence";
import { plain } from "../check/plain";
import { Fault } from "../fault";
import { incompleteBeta } from "../statistics/incompleteBeta";

/** Of the last digits of a likelihood. */
const NOISE = 1e-9;

/** The two scores that one person gave. */
export interface Scores {
  readonly first: number;
  readonly second: number;
}

export interface ComparedThrow {
  /** Of first less second, all who scored counted. */
  readonly medianDifference: number;
  readonly forFirst: number;
  readonly forSecond: number;
  /** How likely a panel would be at least so one-sided, did it find no difference. */
  readonly p: number;
  readonly words: string;
}

/**
 * Two candles scored by the same people: the exact two-sided sign test, which takes of a score only which one is
 * higher. Who scored both alike favours neither.
 * Source: the binomial distribution.
 * @param scores one or more
 * @param sure 0.5 up to below 1; 0.95 when left out
 */
export function throwCompare(scores: readonly Scores[], sure = 0.95): ComparedThrow {
  if (scores.length === 0) throw new Fault("none", "first", "nobody has scored both");
  const doubt = 1 - confidence("confidence", sure);
  const differences = scores.map(({ first, second }) => first - second);
  const forFirst = differences.filter((one) => one > 0).length;
  const forSecond = differences.filter((one) => one < 0).length;
  const p = signTest(forFirst, forSecond);
  const found = { medianDifference: median(differences), forFirst, forSecond, p };
  return { ...found, words: wordsOf(found, doubt) };
}

function signTest(forFirst: number, forSecond: number): number {
  const fewer = Math.min(forFirst, forSecond);
  // At most so many of n for the fewer, at even odds.
  return Math.min(1, 2 * incompleteBeta(0.5, Math.max(forFirst, forSecond), fewer + 1));
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  const [below, above] = [sorted[middle - 1] as number, sorted[middle] as number];
  return sorted.length % 2 === 1 ? above : (below + above) / 2;
}

function wordsOf({ forFirst, forSecond, p }: Omit<ComparedThrow, "words">, doubt: number): string {
  const least = Math.ceil(Math.log2(2 / doubt) - 1e-9);
  const sure = `${plain(100 - doubt * 100)} %`;
  if (p <= doubt * (1 + NOISE))
    return `the ${forFirst > forSecond ? "first" : "second"} is scored higher, at ${sure} confidence`;
  if (forFirst + forSecond >= least) return `no difference shown at ${sure} confidence`;
  return `too few to say: at ${sure} confidence ${least} or more must score them differently`;
}
