import { atLeastZero } from "../check/atLeastZero";
import { Fault } from "../fault";
import { divisionsIn } from "../weighing/divisionsIn";

/** One thing a candle is made of: what the shelf holds and what one candle takes, both in the same unit. */
export interface Need {
  readonly onHand: number;
  readonly perCandle: number;
}

/**
 * Whole candles the shelf allows: the scarcest need decides. Rows with nothing needed are left out.
 * Source: division with the remainder dropped.
 */
export function makeable(needs: readonly Need[]): number {
  const counts = needs
    .map(({ onHand, perCandle }) => ({
      onHand: atLeastZero("onHand", onHand),
      perCandle: atLeastZero("perCandle", perCandle),
    }))
    .filter(({ perCandle }) => perCandle > 0)
    .map(({ onHand, perCandle }) => Math.floor(divisionsIn(onHand, perCandle)));
  if (counts.length === 0) throw new Fault("none", "perCandle", "nothing is needed; give what one candle takes");
  return counts.reduce((least, count) => Math.min(least, count));
}
