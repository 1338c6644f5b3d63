import { dealOut } from "./dealOut";
import { fewestPots } from "./fewestPots";
import { sizeKinds } from "./sizeKinds";
import { type Limit, MOST_STEPS, Steps } from "./steps";

/**
 * A way to fill pots: for each pot, how many of each item it holds; and a number of pots no way can beat.
 * Pots that hold the same may be one list.
 */
export interface Packing {
  readonly pots: readonly (readonly number[])[];
  readonly bound: number;
}

/**
 * Fewest pots for items of so many weights, none divided. The packing is proven the fewest where it has as many pots
 * as the bound. A pot may be full to its capacity; 1e-12 of it more is forgiven, for the noise of binary fractions.
 * Source: one-dimensional bin packing by bounds, column generation and search (see fewestPots and what it calls).
 * @param weights of one item of each kind, above 0 and at most the capacity, in one unit
 * @param counts whole numbers, 0 or more
 */
export function packPots(
  weights: readonly number[],
  counts: readonly number[],
  capacity: number,
  { steps = MOST_STEPS }: Limit = {},
): Packing {
  const kinds = sizeKinds(weights, counts, capacity);
  const { filled, bound } = fewestPots(
    kinds.map(({ size }) => size),
    kinds.map(({ count }) => count),
    new Steps(steps),
  );
  const groups = kinds.map(({ from }) => from);
  const pots = dealOut(filled, groups, counts).flatMap(({ filling, times }) => Array(times).fill(filling));
  return { pots, bound };
}
