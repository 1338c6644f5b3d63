import { atLeastZero } from "../check/atLeastZero";
import { oneOf } from "../check/oneOf";
import { plain } from "../check/plain";
import { Fault } from "../fault";
import { sum } from "../statistics/sum";

/** Something bought: how much, and the price of one unit of it. */
export interface Lot {
  readonly quantity: number;
  readonly unitPrice: number;
}

/**
 * Cost of what was used from a stock of lots.
 * Source: first-in first-out and weighted average (OpenStax, Principles of Accounting).
 * @param lots the oldest first; quantities in one unit, unit prices in money, 0 or more
 * @param used 0 or more, in the unit of the quantities; a fault of no answer when it is more than the stock
 * @param method `first in` (the oldest lots go first) or `average` (all lots at their mean price)
 */
export function stockCost(lots: readonly Lot[], used: number, method = "first in"): number {
  const way = oneOf("method", method, ["first in", "average"]);
  const taken = atLeastZero("used", used);
  const quantities = lots.map(({ quantity }) => atLeastZero("quantities", quantity));
  const prices = lots.map(({ unitPrice }) => atLeastZero("unitPrices", unitPrice));
  const stock = sum(quantities);
  // A stock used up to the last digit of the arithmetic is not overdrawn.
  if (taken > stock * (1 + 1e-12)) {
    throw new Fault("none", "used", `${plain(taken)} is more than the ${plain(stock)} in stock; add the missing lots`);
  }
  if (taken === 0) return 0;
  if (way === "average") return (sum(quantities.map((q, i) => q * (prices[i] as number))) / stock) * taken;
  let left = taken;
  return sum(
    quantities.map((quantity, i) => {
      const part = Math.min(quantity, left);
      left -= part;
      return part * (prices[i] as number);
    }),
  );
}
