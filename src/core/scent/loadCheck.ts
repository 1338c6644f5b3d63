import { rate } from "../check/rate";
import { basisOf } from "./basis";
import { onBasis } from "./onBasis";
import { LIMITS, overLimit } from "./overLimit";

/**
 * Empty text when a load is within the wax's maximum (of wax) and the scent's product limit (of total),
 * else which it is over and by how much. A limit left out is not checked; without any the text says so.
 * Source: common practice for the two bases; the limits are the supplier's.
 * @param load fraction, 0 or more and below 1, on `basis`
 * @param waxMaximum, productLimit fractions from 0 to 1
 */
export function loadCheck(load: number, waxMaximum?: number, productLimit?: number, basis?: string): string {
  const from = basisOf("basis", basis);
  const share = rate("load", load);
  if (waxMaximum === undefined && productLimit === undefined) return "no limit given";
  return [
    overLimit("waxMaximum", onBasis(share, from, LIMITS.waxMaximum.basis), waxMaximum),
    overLimit("productLimit", onBasis(share, from, LIMITS.productLimit.basis), productLimit),
  ]
    .filter((text) => text !== "")
    .join("; ");
}
