import { limit } from "../check/limit";
import { plain } from "../check/plain";
import type { Basis } from "./basis";

/** The limits of a load: the name of each, and its basis. Common practice, no source. */
export const LIMITS = {
  waxMaximum: { name: "wax maximum", basis: "of wax" },
  productLimit: { name: "product limit", basis: "of total" },
} as const satisfies Record<string, { name: string; basis: Basis }>;

/**
 * By how much a load is over one of its limits, in words; empty when it is within.
 * @param load fraction on the basis of the limit
 * @param most fraction from 0 to 1, nothing to compare with when left out
 */
export function overLimit(which: keyof typeof LIMITS, load: number, most: number | undefined): string {
  if (most === undefined) return "";
  const { name, basis } = LIMITS[which];
  const bound = limit(which, most);
  // A limit met to the last digit of the arithmetic is not passed.
  if (load <= bound * (1 + 1e-12)) return "";
  const percent = (value: number, digits: number) => plain(Number((value * 100).toPrecision(digits)));
  // Four digits say enough, unless they make the two look the same.
  const digits = [4, 12].find((count) => percent(load, count) !== percent(bound, count)) ?? 15;
  // The three numbers add up as they are shown.
  const by = plain(Number((Number(percent(load, digits)) - Number(percent(bound, digits))).toPrecision(4)));
  const points = by === "1" ? "point" : "points";
  return `over the ${name} by ${by} ${points}: ${percent(load, digits)} % ${basis}, at most ${percent(bound, digits)} %`;
}
