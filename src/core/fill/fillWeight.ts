import { atLeastZero } from "../check/atLeastZero";
import { factor } from "../check/factor";

/** What a soy-type container wax weighs for one weight of water. Common practice, no source. */
export const USUAL_WAX_FACTOR = 0.86;

/**
 * Weight of wax and scent together that fills the space the water filled.
 * Source: common practice; the vessel's own test pour gives a better factor.
 * @param water weight of the water, 0 or more, any one weight unit; the result is in the same
 * @param waxFactor weight of wax for one weight of water, above 0 and at most 2
 */
export function fillWeight(water: number, waxFactor: number = USUAL_WAX_FACTOR): number {
  return atLeastZero("water", water) * factor("waxFactor", waxFactor);
}
