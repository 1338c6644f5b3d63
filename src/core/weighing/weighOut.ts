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
  const isRaised = amongLargest(lost, missing);
  const weighing = inDivisions(step);
  return floors.map((count, i) => weighing(isRaised(lost[i] as number) ? count + 1 : count));
}

/** Whether a value is one of the so many largest, asked of each in order; of equal ones the earlier are. */
function amongLargest(values: readonly number[], count: number): (value: number) => boolean {
  const sorted = new Float64Array(values).sort();
  const first = Math.max(0, sorted.length - count);
  const least = sorted[first] ?? Number.POSITIVE_INFINITY;
  let equal = 0;
  while (sorted[first + equal] === least) equal++;
  return (value) => value > least || (value === least && equal-- > 0);
}
