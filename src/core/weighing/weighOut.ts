import { aboveZero } from "../check/aboveZero";
import { atLeastZero } from "../check/atLeastZero";
import { sum } from "../statistics/sum";
import { divisionsIn } from "./divisionsIn";

/**
 * Weights in whole scale divisions, each within one division of its exact weight and together the total
 * rounded to a division (half a division goes up). What the total needs beyond the rounded-down weights
 * goes to those that lost most by rounding down, the earlier one first where two lost the same.
 * Source: the largest remainder method.
 * @param weights 0 or more each, any one weight unit
 * @param division of the scale, above 0, in the same unit
 */
export function weighOut(weights: readonly number[], division: number): number[] {
  const step = aboveZero("division", division);
  const exact = weights.map((weight) => divisionsIn(atLeastZero("weights", weight), step));
  const floors = exact.map(Math.floor);
  const missing = Math.round(Number(sum(exact).toPrecision(15))) - sum(floors);
  const byLoss = exact.map((value, i) => ({ i, lost: value - (floors[i] as number) }));
  byLoss.sort((a, b) => b.lost - a.lost || a.i - b.i);
  const raised = new Set(byLoss.slice(0, missing).map(({ i }) => i));
  return floors.map((count, i) => Number(((count + (raised.has(i) ? 1 : 0)) * step).toPrecision(15)));
}
