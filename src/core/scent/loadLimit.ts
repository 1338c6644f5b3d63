import { limit } from "../check/limit";
import { Fault } from "../fault";
import { basisOf } from "./basis";
import { onBasis } from "./onBasis";
import { LIMITS } from "./overLimit";

/**
 * The highest load within the wax's maximum (of wax) and the scent's product limit (of total). One left out does not
 * limit, nor does a product limit of 100 %; a fault where nothing limits.
 * Source: common practice for the two bases; the limits are the supplier's.
 * @param waxMaximum, productLimit fractions from 0 to 1
 * @returns fraction on `basis` (`of wax` when left out, or `of total`)
 */
export function loadLimit(waxMaximum?: number, productLimit?: number, basis?: string): number {
  const on = basisOf("basis", basis);
  const given = { waxMaximum, productLimit };
  const limits = (["waxMaximum", "productLimit"] as const).flatMap((which) => {
    const most = given[which];
    return most === undefined ? [] : [onBasis(limit(which, most), LIMITS[which].basis, on)];
  });
  const least = Math.min(...limits);
  if (limits.length === 0)
    throw new Fault("none", "waxMaximum", "no limit given; fill in the wax maximum or the product limit");
  if (least === Number.POSITIVE_INFINITY) {
    throw new Fault("none", "productLimit", "100 % of total limits nothing; fill in the wax maximum");
  }
  return least;
}
