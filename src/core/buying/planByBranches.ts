import type { PackTask } from "./packTask";

interface Plan {
  readonly counts: readonly bigint[];
  readonly cost: bigint;
  readonly over: bigint;
  readonly bought: bigint;
}

const upTo = (amount: bigint, size: bigint): bigint => (amount + size - 1n) / size;

/**
 * The best plan for a task by branch and bound: least cost, then least left over, then fewest packs.
 * The pack cheapest by size comes first, as many as the need takes, then fewer and fewer of it. What is still to
 * be covered costs at least the unit price of the packs that are left, so a branch that cannot beat the best plan
 * is cut off. Whole numbers throughout: nothing is rounded.
 * @param branches how many to try
 * @returns a count for each pack in the task's order, or undefined when the branches did not suffice
 */
export function planByBranches({ need, packs }: PackTask, branches: number): number[] | undefined {
  const order = packs.map((pack, i) => ({ ...pack, i }));
  order.sort((a, b) => Number(a.price * b.size - b.price * a.size) || Number(b.size - a.size));
  const largest = order.map((_, k) => order.slice(k).sort((a, b) => Number(b.size - a.size))[0]?.size);
  const counts = packs.map(() => 0n);
  const best: { plan?: Plan } = {};
  let tried = 0;

  const isBetter = (cost: bigint, over: bigint, bought: bigint): boolean => {
    const { plan } = best;
    if (!plan || cost !== plan.cost) return !plan || cost < plan.cost;
    return over === plan.over ? bought < plan.bought : over < plan.over;
  };

  /** Tries the packs from the k-th on. True when even the cheapest way to go on costs more than the best plan. */
  const isTooDear = (k: number, left: bigint, cost: bigint, bought: bigint): boolean => {
    tried++;
    if (left <= 0n) {
      if (isBetter(cost, -left, bought)) best.plan = { counts: [...counts], cost, over: -left, bought };
      return false;
    }
    const pack = order[k];
    if (!pack) return true;
    if (best.plan) {
      const beyond = (cost - best.plan.cost) * pack.size + left * pack.price;
      if (beyond > 0n) return true;
      // At best the same cost and nothing left over: only fewer packs would do.
      const least = bought + upTo(left, largest[k] as bigint);
      if (beyond === 0n && best.plan.over === 0n && least >= best.plan.bought) return false;
    }
    for (let count = upTo(left, pack.size); count >= 0n && tried < branches; count--) {
      counts[pack.i] = count;
      // Fewer of this pack leave more to the dearer ones.
      if (isTooDear(k + 1, left - count * pack.size, cost + count * pack.price, bought + count)) break;
    }
    counts[pack.i] = 0n;
    return false;
  };

  isTooDear(0, need, 0n, 0n);
  return tried < branches ? best.plan?.counts.map(Number) : undefined;
}
