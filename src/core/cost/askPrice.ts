import { atLeastZero } from "../check/atLeastZero";
import { plain } from "../check/plain";
import { rate } from "../check/rate";
import { wrong } from "../check/wrong";

/**
 * Price that leaves a margin after fees: price x (1 - feeRate - margin) = cost + feeFixed.
 * Source: the definition of a margin, profit over price.
 * @param cost, feeFixed money, 0 or more
 * @param margin, feeRate fractions of the price, 0 or more, together below 1
 */
export function askPrice(cost: number, margin: number, feeRate = 0, feeFixed = 0): number {
  const kept = 1 - rate("margin", margin) - rate("feeRate", feeRate);
  if (kept < 1e-12) {
    throw wrong(
      "margin",
      `${plain(margin * 100)} % and a fee of ${plain(feeRate * 100)} % leave nothing for the cost; keep the two below 100 %`,
    );
  }
  return (atLeastZero("cost", cost) + atLeastZero("feeFixed", feeFixed)) / kept;
}
