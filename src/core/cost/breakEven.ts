import { atLeastZero } from "../check/atLeastZero";
import { plain } from "../check/plain";
import { Fault } from "../fault";
import { divisionsIn } from "../weighing/divisionsIn";
import { profit } from "./profit";

/**
 * Whole units to sell before fixed costs are paid: fixed costs over the profit of one, rounded up.
 * Source: contribution margin break-even (OpenStax, Principles of Accounting).
 * @param fixed money, 0 or more
 * @param price, cost, feeRate, feeFixed of one unit, see profit
 */
export function breakEven(fixed: number, price: number, cost: number, feeRate?: number, feeFixed?: number): number {
  const paid = atLeastZero("fixed", fixed);
  const each = withoutDust(profit(price, cost, feeRate, feeFixed), price);
  if (each <= 0) {
    const loss = each < 0 ? `loses ${plain(-each)}` : "brings nothing";
    throw new Fault("none", "price", `each one sold ${loss}; raise the price or lower the cost`);
  }
  return Math.ceil(divisionsIn(paid, each));
}

/** To 12 digits of the price: what binary fractions lose or gain behind them is no money, and no unit more. */
function withoutDust(each: number, price: number): number {
  const places = 12 - Math.ceil(Math.log10(price));
  return Number(each.toFixed(Math.min(100, Math.max(0, places))));
}
