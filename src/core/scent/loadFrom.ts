import { aboveZero } from "../check/aboveZero";
import { atLeastZero } from "../check/atLeastZero";
import { basisOf } from "./basis";

/**
 * The load that was really weighed.
 * Source: the definitions of the two bases.
 * @param wax weight above 0, any one weight unit
 * @param scent weight, 0 or more, in the same unit
 * @returns fraction on `basis` (`of wax` when left out, or `of total`)
 */
export function loadFrom(wax: number, scent: number, basis?: string): number {
  const base = aboveZero("wax", wax);
  const added = atLeastZero("scent", scent);
  return added / (basisOf("basis", basis) === "of wax" ? base : base + added);
}
