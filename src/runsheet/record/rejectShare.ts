import { sum } from "../../core/statistics/sum";
import type { RunCandles } from "../stock/trace";

/**
 * The share of candles that did not come out good, of all that were counted; undefined where none were. A row with more
 * good ones than candles is a slip, and left out.
 */
export function rejectShare(candles: readonly RunCandles[]): number | undefined {
  const counted = candles.flatMap(({ candles, good }) =>
    candles !== undefined && good !== undefined && candles > 0 && good >= 0 && good <= candles
      ? [{ candles, good }]
      : [],
  );
  const made = sum(counted.map((one) => one.candles));
  return made > 0 ? 1 - sum(counted.map(({ good }) => good)) / made : undefined;
}
