import { type Pack, packPlan } from "./packPlan";
import { wholeNumbers } from "./wholeNumbers";

/**
 * What the packs of the best plan cost together: whole prices added up, so 3 packs at 12.99 cost 38.97.
 * @param need, packs see packPlan
 */
export function packCost(need: number, packs: readonly Pack[]): number {
  const { wholes, exponent } = wholeNumbers(packs.map(({ price }) => price));
  const cost = packPlan(need, packs).reduce((total, count, i) => total + BigInt(count) * (wholes[i] as bigint), 0n);
  return Number(`${cost}e${exponent}`);
}
