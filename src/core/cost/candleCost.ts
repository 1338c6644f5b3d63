import { atLeastZero } from "../check/atLeastZero";
import { rate } from "../check/rate";
import { Fault } from "../fault";
import { sum } from "../statistics/sum";

/** What one candle takes of something, and the price of one unit of that weight. */
export interface Ingredient {
  readonly weight: number;
  readonly unitPrice: number;
}

/**
 * Cost of one good candle: its ingredients, its parts and its labour, with the rejects paid for by the good ones.
 * Source: direct cost over yield, common practice.
 * @param ingredients weights and unit prices of 0 or more, each price for the unit of its weight
 * @param parts money each (vessel, wick, lid, label), 0 or more
 * @param labour money, 0 or more
 * @param rejectRate share of candles that cannot be sold, 0 or more and below 1
 */
export function candleCost(
  ingredients: readonly Ingredient[],
  parts: readonly number[] = [],
  labour = 0,
  rejectRate = 0,
): number {
  if (ingredients.length + parts.length === 0) {
    throw new Fault("none", "weights", "nothing to cost; give weights and their unit prices, or parts");
  }
  const costs = ingredients.map(
    ({ weight, unitPrice }) => atLeastZero("weights", weight) * atLeastZero("unitPrices", unitPrice),
  );
  const made = sum([...costs, ...parts.map((part) => atLeastZero("parts", part)), atLeastZero("labour", labour)]);
  return made / (1 - rate("rejectRate", rejectRate));
}
