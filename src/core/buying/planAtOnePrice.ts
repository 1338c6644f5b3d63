import type { PackTask } from "./packTask";

/**
 * The best plan for a task where packs that are cheapest by size cover the need to the last step: nothing costs less.
 * Of those the largest is the base. Fewest packs are those that are the least smaller than as many of the base, all
 * together, and this shortfall must be what the need lacks to whole bases. Which shortfalls there are is marked in
 * a row of bits, for each size all at once. Source: bounded knapsack by words of bits (Pisinger 2003).
 * @param work how many words of 32 bits, times packs, to go through
 * @returns a count for each pack; undefined where there is no such plan, or none was found with so much work
 */
export function planAtOnePrice({ need, packs }: PackTask, work: number): number[] | undefined {
  const cheapest = packs.reduce((a, b) => (b.price * a.size < a.price * b.size ? b : a));
  const tied = [...packs.keys()].filter((i) => {
    const { size, price } = packs[i] as PackTask["packs"][number];
    return price * cheapest.size === cheapest.price * size;
  });
  const sizeOf = (i: number): bigint => (packs[i] as PackTask["packs"][number]).size;
  const at = tied.reduce((a, b) => (sizeOf(b) > sizeOf(a) ? b : a));
  const base = sizeOf(at);
  const most = Math.floor((32 * work) / packs.length);
  if (base > BigInt(most)) return undefined;

  const smaller = tied.map((i) => ({ i, by: Number(base - sizeOf(i)) })).filter(({ by }) => by > 0);
  const lacking = Number((base - (need % base)) % base);
  const shortfall = leastReached(
    lacking,
    Number(base),
    smaller.map(({ by }) => by),
    most,
  );
  if (!shortfall) return undefined;
  const counts = packs.map(() => 0);
  let left = need;
  for (const k of shortfall) {
    const i = smaller[k]?.i as number;
    counts[i] = (counts[i] as number) + 1;
    left -= sizeOf(i);
  }
  if (left < 0n) return undefined;
  counts[at] = Number(left / base);
  return counts;
}

/** The steps whose sum is the least of first, first + by, first + 2 by and so on that any sum is, up to `most`. */
function leastReached(first: number, by: number, steps: readonly number[], most: number): number[] | undefined {
  for (let end = Math.min(most, 2 * by); ; end = Math.min(most, 2 * end)) {
    const reached = sumsOf(steps, end);
    for (let sum = first; sum <= end; sum += by) if (isSet(reached, sum)) return partsOf(sum, steps, reached);
    if (end === most) return undefined;
  }
}

const isSet = (bits: Uint32Array, at: number): boolean => (((bits[at >>> 5] as number) >>> (at & 31)) & 1) === 1;

/** A bit for each number up to the end: whether it is a sum of steps, each as often as needed. */
function sumsOf(steps: readonly number[], end: number): Uint32Array {
  const bits = new Uint32Array((end >>> 5) + 1);
  bits[0] = 1;
  for (const step of steps) {
    // A short step reaches on within a word: twice, four times and so on as far, until it leaves it.
    let wide = step;
    for (; wide < 32; wide *= 2) shift(bits, wide);
    shift(bits, wide);
  }
  return bits;
}

/** Marks also what lies one step further than any marked number, and so on: words before are ready. */
function shift(bits: Uint32Array, step: number): void {
  const words = step >>> 5;
  const by = step & 31;
  for (let to = words; to < bits.length; to++) {
    const low = (bits[to - words] as number) << by;
    // A shift by 32 would be none.
    const high = by > 0 && to > words ? (bits[to - words - 1] as number) >>> (32 - by) : 0;
    bits[to] = (bits[to] as number) | low | high;
  }
}

/** Which steps make up a sum. */
function partsOf(sum: number, steps: readonly number[], reached: Uint32Array): number[] {
  const parts: number[] = [];
  for (let left = sum; left > 0; ) {
    const part = steps.findIndex((step) => step <= left && isSet(reached, left - step));
    parts.push(part);
    left -= steps[part] as number;
  }
  return parts;
}
