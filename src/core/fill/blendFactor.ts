import { factor } from "../check/factor";
import { basisOf } from "../scent/basis";
import { loadAs } from "../scent/loadAs";

/**
 * Factor of a mixture of wax and scent, their volumes adding: 1/f = sum(share / f of each).
 * Source: ideal mixing; a real mixture can miss it, and the test pour tells.
 * @param waxFactor, scentFactor weight for one weight of water, above 0 and at most 2
 * @param load fraction, 0 or more and below 1, on `basis` (`of wax` when left out, or `of total`)
 */
export function blendFactor(waxFactor: number, scentFactor: number, load: number, basis?: string): number {
  const scent = loadAs(load, basisOf("basis", basis), "of total");
  return 1 / ((1 - scent) / factor("waxFactor", waxFactor) + scent / factor("scentFactor", scentFactor));
}
