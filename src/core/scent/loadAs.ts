import { rate } from "../check/rate";
import { basisOf } from "./basis";
import { onBasis } from "./onBasis";

/**
 * A load on one basis as a load on the other. At half of the total and beyond, the load of wax is 1 or more.
 * Source: the definitions, scent / wax and scent / (wax + scent).
 * @param load fraction, 0 or more and below 1, on the basis `from`
 */
export function loadAs(load: number, from: string, to: string): number {
  return onBasis(rate("load", load), basisOf("from", from), basisOf("to", to));
}
