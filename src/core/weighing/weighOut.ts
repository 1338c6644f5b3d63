import { aboveZero } from "../check/aboveZero";
import { atLeastZero } from "../check/atLeastZero";
import { plain } from "../check/plain";
import { wrong } from "../check/wrong";
import { sum } from "../statistics/sum";

/** Digits that count: binary fractions make noise behind them, and what a person writes stands before. */
const DIGITS = 12;

/**
 * Weights in whole scale divisions, each within one division of its exact weight and together the total
 * rounded to a division (half a division goes up). What the total needs beyond the rounded-down weights
 * goes to those that lost most by rounding down, the earlier one first where two lost the same.
 * Source: the largest remainder method.
 * @param weights 0 or more each, any one weight unit
 * @param division of the scale, above 0, in the same unit
 * @param total what the weights are parts of, where that is known better than by adding them up
 */
export function weighOut(weights: readonly number[], division: number, total: number = sum(weights)): number[] {
  const step = aboveZero("division", division);
  const exact = weights.map((weight) => atLeastZero("weights", weight) / step);
  const whole = total / step;
  const decimals = DIGITS - 1 - Math.floor(Math.log10(Math.max(1, whole)));
  if (!(decimals > 0))
    throw wrong("division", `${plain(step)} is too fine for ${plain(total)}; write the scale's step`);
  const floors = exact.map(Math.floor);
  const missing = Math.round(Number(whole.toFixed(decimals))) - sum(floors);
  const byLoss = exact.map((value, i) => ({ i, lost: Number((value - (floors[i] as number)).toFixed(decimals)) }));
  // Where two lost the same they keep their order.
  byLoss.sort((a, b) => b.lost - a.lost);
  const raised = new Set(byLoss.slice(0, missing).map(({ i }) => i));
  return floors.map((count, i) => Number(((count + (raised.has(i) ? 1 : 0)) * step).toPrecision(15)));
}
