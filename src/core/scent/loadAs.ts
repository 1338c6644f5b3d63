import { rate } from "../check/rate";
import { basisOf } from "./basis";

/**
 * A load on one basis as a load on the other. At half of the total and beyond, the load of wax is 1 or more.
 * Source: the definitions, scent / wax and scent / (wax + scent).
 * @param load fraction, 0 or more and below 1, on the basis `from`
 */
export function loadAs(load: number, from: string, to: string): number {
  const share = rate("load", load);
  const [source, target] = [basisOf("from", from), basisOf("to", to)];
  if (source === target) return share;
  return source === "of wax" ? share / (1 + share) : share / (1 - share);
}
