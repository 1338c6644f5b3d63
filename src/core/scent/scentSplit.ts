import { atLeastZero } from "../check/atLeastZero";
import { rate } from "../check/rate";
import { basisOf } from "./basis";

/** The two parts of a fill, in the fill's own unit. */
export interface Parts {
  readonly wax: number;
  readonly scent: number;
}

/**
 * Wax and scent of a fill. The scent is what the wax leaves: floating point is exact there, so that the two always add
 * up to the fill.
 * Source: the definitions of the two bases.
 * @param fill weight of wax and scent together, 0 or more, any one weight unit
 * @param load fraction, 0 or more and below 1, on `basis` (`of wax` when left out, or `of total`)
 */
export function scentSplit(fill: number, load: number, basis?: string): Parts {
  const whole = atLeastZero("fill", fill);
  const share = rate("load", load);
  // Where the scent is the larger part this difference is exact, where it is the smaller the next one is.
  const wax = basisOf("basis", basis) === "of wax" ? whole / (1 + share) : whole - whole * share;
  return { wax, scent: whole - wax };
}
