import { aboveZero } from "../check/aboveZero";
import { atLeastZero } from "../check/atLeastZero";
import { plain } from "../check/plain";
import { wrong } from "../check/wrong";
import { sum } from "../statistics/sum";
import { inDivisions } from "./inDivisions";

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
  const digits = 10 ** decimals;
  const lost = exact.map((value, i) => Math.round((value - (floors[i] as number)) * digits));
  const isRaised = areLargest(lost, missing);
  const weighing = inDivisions(step);
  return floors.map((count, i) => weighing(isRaised[i] ? count + 1 : count));
}

/** Which of the values are the so many largest; of equal ones the earlier. */
function areLargest(values: readonly number[], count: number): boolean[] {
  const sorted = Float64Array.from(values).sort();
  const least = sorted[Math.max(0, sorted.length - count)] ?? Number.POSITIVE_INFINITY;
  let equal = count - values.filter((value) => value > least).length;
  return values.map((value) => value > least || (value === least && equal-- > 0));
}
