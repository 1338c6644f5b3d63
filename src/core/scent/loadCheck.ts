import { plain } from "../check/plain";
import { rate } from "../check/rate";
import { type Basis, basisOf } from "./basis";
import { loadAs } from "./loadAs";

/**
 * Empty text when a load is within the wax's maximum (of wax) and the scent's product limit (of total),
 * else which limit it passes and by how much. A limit left out is not checked.
 * Source: common practice for the two bases; the limits are the supplier's.
 * @param load, waxMaximum, productLimit fractions, 0 or more and below 1; `load` is on `basis`
 */
export function loadCheck(load: number, waxMaximum?: number, productLimit?: number, basis?: string): string {
  const from = basisOf("basis", basis);
  const passed = (name: string, what: string, limit: number | undefined, on: Basis): string[] => {
    if (limit === undefined) return [];
    const most = rate(name, limit);
    const has = loadAs(load, from, on);
    // A limit met to the last digit of the arithmetic is not passed.
    if (has <= most * (1 + 1e-12)) return [];
    const percent = (value: number) => plain(Number((value * 100).toPrecision(4)));
    return [`${what} passed by ${percent(has - most)} points: ${percent(has)} % ${on}, at most ${percent(most)} %`];
  };
  return [
    ...passed("waxMaximum", "wax maximum", waxMaximum, "of wax"),
    ...passed("productLimit", "product limit", productLimit, "of total"),
  ].join("; ");
}
