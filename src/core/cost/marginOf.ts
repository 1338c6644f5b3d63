import { profit } from "./profit";

/**
 * Margin of a price: what a sale leaves after fees and cost, as a fraction of the price; below 0 at a loss.
 * Source: the definition, profit over price.
 * @param price, cost, feeRate, feeFixed see profit
 */
export function marginOf(price: number, cost: number, feeRate?: number, feeFixed?: number): number {
  return profit(price, cost, feeRate, feeFixed) / price;
}
