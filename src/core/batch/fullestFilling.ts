import { bestFilling } from "./bestFilling";
import { dot, type Filling, ROOM } from "./filling";
import { greedyFilling } from "./greedyFilling";
import type { Steps } from "./steps";

/** Fillings tried, times kinds: those that do not fit are passed over one by one. */
const WORK = 400_000;

/** The fullest pot with one of the largest candles left that a short search finds (Gupta & Ho 1999). */
export function fullestFilling(sizes: readonly number[], left: readonly number[], steps: Steps): Filling {
  const first = left.findIndex((n) => n > 0);
  const room = ROOM - (sizes[first] as number);
  const others = left.map((n, i) => (i === first ? n - 1 : n));
  const patience = Math.min(2000, WORK / sizes.length);
  const { filling, tried } = bestFilling(sizes, others, room, sizes, room - 1e-5, patience);
  steps.spend(tried + sizes.length);
  const found = filling.map((n, i) => (i === first ? n + 1 : n));
  const greedy = greedyFilling(sizes, left);
  return dot(sizes, found) > dot(sizes, greedy) ? found : greedy;
}
