import type { Pack } from "./packPlan";
import { wholeNumbers } from "./wholeNumbers";

/**
 * What so many of each pack cost together: whole prices added up, so 3 packs at 12.99 cost 38.97.
 * @param counts whole numbers, 0 or more, one for each pack
 */
export function costOfPacks(counts: readonly number[], packs: readonly Pack[]): number {
  const { wholes, exponent } = wholeNumbers(packs.map(({ price }) => price));
  const cost = counts.reduce((total, count, i) => total + BigInt(count) * (wholes[i] as bigint), 0n);
  return Number(`${cost}e${exponent}`);
}
