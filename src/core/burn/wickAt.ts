import { plain } from "../check/plain";
import { wrong } from "../check/wrong";
import { Fault } from "../fault";
import { straightLine } from "../statistics/straightLine";
import { studentT } from "../statistics/studentT";
import { sum } from "../statistics/sum";
import type { Point } from "../statistics/throughOrigin";

/** Of the last digits of a size, in shares of the sizes tried. */
const NOISE = 1e-9;

export interface WickAt {
  readonly size: number;
  readonly lower: number;
  readonly upper: number;
}

/**
 * The size of wick at which a straight line through all candles gives the wanted value, with its 95 % interval. Both
 * the line and where it lies are uncertain: the interval holds every size at which a line through these candles may
 * give the value (Fieller). A size that was not tried, above the largest or below the smallest, is none.
 * @param candles three or more, x the size of the wick and y what the candle showed, of two sizes or more
 * @param wanted in the unit of the values
 */
export function wickAt(candles: readonly Point[], wanted: number): WickAt {
  const n = candles.length;
  if (n < 3) throw new Fault("none", "values", `${n} candles with size and value; burn 3 or more`);
  const xs = candles.map(({ x }) => x);
  const [least, most] = xs.reduce(([low, high], x) => [Math.min(low, x), Math.max(high, x)], [xs[0] ?? 0, xs[0] ?? 0]);
  if (least === most) throw wrong("sizes", "all candles have one size of wick; a line needs two or more");
  const { slope, intercept } = straightLine(candles);
  const x = sum(xs) / n;
  const y = intercept + slope * x;
  const squares = sum(xs.map((one) => (one - x) ** 2));
  const residual = sum(candles.map((one) => (one.y - intercept - slope * one.x) ** 2)) / (n - 2);
  const t2 = studentT(n - 2) ** 2;
  // (slope d - rise)^2 = t2 residual (1 / n + d^2 / squares) for d, the way from the mean size.
  const rise = wanted - y;
  const steep = slope ** 2 - (t2 * residual) / squares;
  if (!(steep > 0))
    throw new Fault("none", "values", "the line is too flat to say; burn more candles, of sizes further apart");
  const size = x + rise / slope;
  const noise = NOISE * (most - least);
  if (size < least - noise || size > most + noise) {
    const tried = `those tried, ${plain(least)} to ${plain(most)}`;
    throw new Fault("none", "wanted", `the line gives ${plain(wanted)} at a size beyond ${tried}; test there`);
  }
  const half = Math.sqrt(t2 * residual * (rise ** 2 / squares + steep / n));
  return { size, lower: x + (slope * rise - half) / steep, upper: x + (slope * rise + half) / steep };
}
