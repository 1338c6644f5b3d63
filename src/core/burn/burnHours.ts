import { aboveZero } from "../check/aboveZero";
import { atLeastZero } from "../check/atLeastZero";
import { rate as share } from "../check/rate";

/**
 * Hours until a share of the wax is left.
 * Source: weight over weight an hour, taking the rate as steady.
 * @param wax weight, 0 or more, any one weight unit
 * @param rate weight lost an hour, above 0, in the same unit
 * @param leave share of the wax that stays, 0 or more and below 1
 */
export function burnHours(wax: number, rate: number, leave = 0): number {
  return (atLeastZero("wax", wax) * (1 - share("leave", leave))) / aboveZero("rate", rate);
}
