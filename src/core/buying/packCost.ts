import { costOfPacks } from "./costOfPacks";
import { type Pack, packPlan } from "./packPlan";

/**
 * What the packs of the best plan cost together.
 * @param need, packs see packPlan
 */
export function packCost(need: number, packs: readonly Pack[]): number {
  return costOfPacks(packPlan(need, packs), packs);
}
