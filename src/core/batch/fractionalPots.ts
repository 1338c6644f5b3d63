import { bestFilling } from "./bestFilling";
import { dot, type Filling, ROOM, type SamePots } from "./filling";
import type { Steps } from "./steps";

/** Pots where a part of a pot may be poured too: fillings and how many pots of each. */
export interface Fractional {
  readonly fillings: readonly Filling[];
  readonly times: readonly number[];
  /** Whole pots that are needed at least; the goal where that was not found out of reach. */
  readonly pots: number;
  /** What a candle of each kind is worth, in pots, such that no filling is worth more than 1. */
  readonly worth: readonly number[];
}

/** Prices are whole multiples of 1 / ONE, so that adding and comparing them is exact. */
const ONE = 2 ** 30;
/** What a filling must be worth to be of use: a millionth more than a pot. */
const GAIN = ONE + 1000;

/**
 * Fewest pots where a part of a pot may be poured too, by a linear program over all fillings. Each turn prices the
 * candles by the fillings in use and takes in the filling worth most. Where none is worth as much as all candles
 * divided by the goal, the goal is out of reach for whole pots too (Farley 1990); that holds for any prices, and
 * so however they were rounded. Source: column generation, Gilmore & Gomory 1961.
 * @param goal whole pots hoped for: ends when the fractional ones are as few, unless `thorough`
 * @param known fillings worth trying before others are looked for
 */
export function fractionalPots(
  sizes: readonly number[],
  counts: readonly number[],
  goal: number,
  known: readonly SamePots[],
  steps: Steps,
  thorough = false,
): Fractional {
  const m = sizes.length;
  const most = sizes.map((size, i) => Math.min(counts[i] as number, Math.floor(ROOM / size)));
  const fillings: Filling[] = most.map((n, i) => sizes.map((_, j) => (i === j ? n : 0)));
  // The simplex tableau: for each filling in use a row of the inverse and its pots; last the prices and all pots.
  const rows = most.map((n, i) => [...sizes.map((_, j) => (i === j ? 1 / n : 0)), (counts[i] as number) / n]);
  const prices = Array.from({ length: m + 1 }, (_, j) => rows.reduce((total, row) => total + (row[j] as number), 0));
  rows.push(prices);
  let [pots, best, worth] = [goal, 0, sizes];

  while (steps.spend((m * m) / 2 + 300)) {
    if (!thorough && (prices[m] as number) <= pots + 1e-9) break;
    let next = known.find(({ filling }) => dot(prices, filling) > 1.1)?.filling;
    if (!next) {
      const values = sizes.map((_, i) => Math.max(0, Math.round((prices[i] as number) * ONE)));
      const all = dot(values, counts);
      const tooLittle = Math.ceil(all / pots) - 1;
      const found = bestFilling(sizes, counts, ROOM, values, Math.max(tooLittle, GAIN), thorough ? 1e5 : 1e7);
      steps.spend(4 * found.tried);
      if (all / found.most > best) {
        best = all / found.most;
        worth = values.map((value) => value / found.most);
      }
      if (found.most <= tooLittle) {
        pots = Math.ceil(all / found.most);
        continue;
      }
      if (found.value <= GAIN) break;
      next = found.filling;
    }
    const entering = rows.map((row) => dot(row, next));
    entering[m] = (entering[m] as number) - 1;
    let [leaving, least] = [-1, Infinity];
    for (let i = 0; i < m; i++) {
      const by = entering[i] as number;
      if (by < 1e-7) continue;
      const ratio = Math.max(0, rows[i]?.[m] as number) / by;
      // Among equals the largest divisor, which keeps the digits.
      if (ratio < least - 1e-9 || (ratio < least + 1e-9 && by > (entering[leaving] as number))) {
        [leaving, least] = [i, ratio];
      }
    }
    const pivot = rows[leaving];
    if (!pivot) break;
    fillings[leaving] = next;
    for (let j = 0; j <= m; j++) pivot[j] = (pivot[j] as number) / (entering[leaving] as number);
    for (const [i, row] of rows.entries()) {
      const by = entering[i] as number;
      if (row === pivot || by === 0) continue;
      for (let j = 0; j <= m; j++) row[j] = (row[j] as number) - by * (pivot[j] as number);
    }
  }
  return { fillings, times: rows.slice(0, m).map((row) => row[m] as number), pots, worth };
}
