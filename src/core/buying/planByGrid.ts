import type { PackTask } from "./packTask";

/** A cost too long for one number is kept as two: how many times this, and what is left of it. */
const SPLIT = 2 ** 40;

/**
 * The best plan for a task by dynamic programming: the best cover of every need from 1 up to the task's, each from
 * a smaller one and one more pack. Least cost, then least bought, then fewest packs. Exact: whole numbers below
 * 2^53, costs as two of them.
 * @param work how many steps of need, times packs, to go through
 * @returns a count for each pack, or undefined when the work does not suffice or the numbers are too long
 */
export function planByGrid({ need, packs }: PackTask, work: number): number[] | undefined {
  const steps = Number(need);
  const dearest = Math.max(...packs.map(({ price }) => Number(price)));
  const largest = Math.max(...packs.map(({ size }) => Number(size)));
  const isLong = (dearest * (steps + 1)) / SPLIT >= 2 ** 52 || largest + steps >= 2 ** 52;
  if (isLong || steps * packs.length > work) return undefined;
  const kinds = packs.map(({ size, price }) => ({
    size: Number(size),
    high: Number(price / BigInt(SPLIT)),
    low: Number(price % BigInt(SPLIT)),
  }));

  const highs = new Float64Array(steps + 1);
  const lows = new Float64Array(steps + 1);
  const amounts = new Float64Array(steps + 1);
  const numbers = new Float64Array(steps + 1);
  const lasts = new Int32Array(steps + 1);
  for (let step = 1; step <= steps; step++) {
    let [high, low, amount, number] = [Number.POSITIVE_INFINITY, 0, 0, 0];
    for (const [i, kind] of kinds.entries()) {
      const before = Math.max(0, step - kind.size);
      const sum = (lows[before] as number) + kind.low;
      const carry = sum >= SPLIT ? 1 : 0;
      const newHigh = (highs[before] as number) + kind.high + carry;
      const newLow = sum - carry * SPLIT;
      const newAmount = (amounts[before] as number) + kind.size;
      const newNumber = (numbers[before] as number) + 1;
      const better = newHigh - high || newLow - low || newAmount - amount || newNumber - number;
      if (better < 0) {
        [high, low, amount, number] = [newHigh, newLow, newAmount, newNumber];
        lasts[step] = i;
      }
    }
    highs[step] = high;
    lows[step] = low;
    amounts[step] = amount;
    numbers[step] = number;
  }

  const counts = packs.map(() => 0);
  for (let left = steps; left > 0; ) {
    const last = lasts[left] as number;
    counts[last] = (counts[last] as number) + 1;
    left -= kinds[last]?.size as number;
  }
  return counts;
}
