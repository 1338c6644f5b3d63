import { limit } from "../check/limit";
import { plain } from "../check/plain";
import { rate } from "../check/rate";
import { type Basis, basisOf } from "./basis";
import { loadAs } from "./loadAs";

/**
 * Empty text when a load is within the wax's maximum (of wax) and the scent's product limit (of total),
 * else which limit it passes and by how much. A limit left out is not checked.
 * Source: common practice for the two bases; the limits are the supplier's.
 * @param load fraction, 0 or more and below 1, on `basis`
 * @param waxMaximum, productLimit fractions from 0 to 1
 */
export function loadCheck(load: number, waxMaximum?: number, productLimit?: number, basis?: string): string {
  const from = basisOf("basis", basis);
  const share = rate("load", load);
  const passed = (name: string, what: string, bound: number | undefined, on: Basis): string[] => {
    if (bound === undefined) return [];
    const most = limit(name, bound);
    const has = loadAs(share, from, on);
    // A limit met to the last digit of the arithmetic is not passed.
    if (has <= most * (1 + 1e-12)) return [];
    const percent = (value: number, digits: number) => plain(Number((value * 100).toPrecision(digits)));
    // Four digits say enough, unless they make the two look the same.
    const digits = [4, 12].find((count) => percent(has, count) !== percent(most, count)) ?? 15;
    const by = percent(has - most, 4);
    return [
      `${what} passed by ${by} ${by === "1" ? "point" : "points"}: ${percent(has, digits)} % ${on}, at most ${percent(most, digits)} %`,
    ];
  };
  return [
    ...passed("waxMaximum", "wax maximum", waxMaximum, "of wax"),
    ...passed("productLimit", "product limit", productLimit, "of total"),
  ].join("; ");
}
