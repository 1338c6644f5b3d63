import { type Order, type PotPlan, potPlan } from "../../core/batch/potPlan";
import type { Limit } from "../../core/batch/steps";

/** As many plans as the largest batches have scents and waxes, and as their last edits made of them. */
const MOST_PLANS = 200;

/** Plans of pots that were made before, by all that they were made of: a change in one scent leaves the others as they are. */
export class KeptPlans {
  readonly #plans = new Map<string, { readonly plan: PotPlan; readonly lines: number }>();
  #lines = 0;

  /** @param most orders and pots of all plans that are kept: the last used ones, and the last one anyway */
  constructor(private readonly most = 50_000) {}

  /** See potPlan. */
  potPlan(orders: readonly Order[], potCapacity: number, loss: number, limit: Limit, unit?: string): PotPlan {
    const key = JSON.stringify([
      potCapacity,
      loss,
      limit.steps,
      unit,
      orders.map((one) => [one.vessel, one.fill, one.quantity]),
    ]);
    const kept = this.#plans.get(key);
    this.#plans.delete(key);
    const plan = kept?.plan ?? potPlan(orders, potCapacity, loss, limit, unit);
    const lines = orders.length + plan.pots.length;
    // Those used last stand last.
    this.#plans.set(key, { plan, lines });
    if (!kept) this.#forget(lines);
    return plan;
  }

  /** Makes room for so many lines more. */
  #forget(more: number): void {
    this.#lines += more;
    for (const [key, { lines }] of this.#plans) {
      const fits = this.#lines <= this.most && this.#plans.size <= MOST_PLANS;
      if (fits || this.#plans.size === 1) return;
      this.#plans.delete(key);
      this.#lines -= lines;
    }
  }
}
