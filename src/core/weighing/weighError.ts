import { aboveZero } from "../check/aboveZero";

/**
 * The worst relative error that half a scale division makes in a weight.
 * Source: a reading rounded to a division is off by at most half of one.
 * @param weight, division above 0, any one weight unit
 * @returns fraction of the weight
 */
export function weighError(weight: number, division: number): number {
  return aboveZero("division", division) / 2 / aboveZero("weight", weight);
}
