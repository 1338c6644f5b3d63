import { aboveZero } from "../check/aboveZero";
import { atLeastZero } from "../check/atLeastZero";
import { rate } from "../check/rate";

/**
 * What one sale leaves after fees and cost; below 0 when it loses money.
 * @param price above 0; cost, feeFixed 0 or more, all money; feeRate share of the price, 0 or more and below 1
 */
export function profit(price: number, cost: number, feeRate = 0, feeFixed = 0): number {
  const taken = aboveZero("price", price) * (1 - rate("feeRate", feeRate)) - atLeastZero("feeFixed", feeFixed);
  return taken - atLeastZero("cost", cost);
}
