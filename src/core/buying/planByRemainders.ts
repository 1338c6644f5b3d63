import type { PackTask } from "./packTask";

/** Whole numbers up to here add up exactly. */
const EXACT = 2 ** 52;

/**
 * The best plan for a task by shortest paths over the remainders of one pack, the base: the cheapest by size, of those
 * the largest. Fewer other packs suffice than the base has steps, for some of so many could be replaced by the base.
 * So for each remainder the other packs that cost least beyond the base's unit price, then the fewest, and the need
 * filled up with the base. Whole numbers throughout. Source: round robin over cycles (Böcker & Lipták 2007).
 * @param work how many remainders, times packs, to go through
 * @returns a count for each pack; undefined when the work does not suffice, the numbers are too long, or the need is so
 * small that the best for its remainder does not fit into it
 */
export function planByRemainders({ need, packs }: PackTask, work: number): number[] | undefined {
  const order = [...packs.keys()].sort((a, b) => {
    const [one, other] = [packs[a], packs[b]] as [PackTask["packs"][number], PackTask["packs"][number]];
    return Number(one.price * other.size - other.price * one.size) || Number(other.size - one.size);
  });
  const at = order[0] as number;
  const base = packs[at] as PackTask["packs"][number];
  const m = Number(base.size);
  if (m * packs.length > work || Number(base.price) * m > EXACT) return undefined;

  // Beyond the base: what a pack costs more than its share of a base, and what it counts for more; times the base's size.
  const others = order.slice(1).map((i) => {
    const { size, price } = packs[i] as PackTask["packs"][number];
    const dearer = Number(price * base.size - size * base.price);
    return { i, step: Number(size % base.size), dearer, more: Number(base.size - size) };
  });
  const paths = shortestPaths(m, others);

  // The need, or as little more as costs least: each remainder once, and the base fills up.
  const [first, price] = [Number(need % base.size), Number(base.price)];
  let [best, cost] = [-1, Infinity];
  for (let over = 0; over < m; over++) {
    const beyond = over * price + (paths.dearer[(first + over) % m] as number);
    if (beyond < cost) [best, cost] = [over, beyond];
  }
  if (cost > EXACT) return undefined;
  const counts = packs.map(() => 0);
  let left = need + BigInt(best);
  for (let rest = (first + best) % m; rest > 0; ) {
    const { i, step } = others[paths.last[rest] as number] as (typeof others)[number];
    counts[i] = (counts[i] as number) + 1;
    left -= (packs[i] as PackTask["packs"][number]).size;
    rest = (rest - step + m) % m;
  }
  if (left < 0n) return undefined;
  counts[at] = Number(left / base.size);
  return counts;
}

interface Other {
  readonly step: number;
  readonly dearer: number;
  readonly more: number;
}

/** For each remainder the least that packs with it cost and count beyond the base, and the last pack of the way there. */
function shortestPaths(m: number, others: readonly Other[]) {
  const dearer = new Float64Array(m).fill(Infinity);
  const more = new Float64Array(m);
  const last = new Int32Array(m).fill(-1);
  dearer[0] = 0;
  for (const [k, other] of others.entries()) {
    const cycles = divisor(other.step, m);
    for (let start = 0; start < cycles; start++) {
      // Twice round: wherever the cheapest of a cycle stands, the way leads from there to all others.
      let from = start;
      for (let turn = (2 * m) / cycles; turn > 0; turn--) {
        const to = from + other.step < m ? from + other.step : from + other.step - m;
        const cost = (dearer[from] as number) + other.dearer;
        const count = (more[from] as number) + other.more;
        if (cost < (dearer[to] as number) || (cost === dearer[to] && count < (more[to] as number))) {
          dearer[to] = cost;
          more[to] = count;
          last[to] = k;
        }
        from = to;
      }
    }
  }
  return { dearer, last };
}

const divisor = (a: number, b: number): number => (b === 0 ? a : divisor(b, a % b));
