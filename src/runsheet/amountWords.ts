import { plain } from "../core/check/plain";
import { formatWeight } from "./likelyWeight";
import type { WeightUnit } from "./settings";
import type { Use } from "./tables/byUse";

/** An amount by number or by weight; both are said where it is not known which it is. */
export function amountWords(amount: number, use: Use | undefined, unit: WeightUnit): string {
  if (use === undefined) return `${plain(amount)} (${unit} or pieces)`;
  return use === "count" ? plain(amount) : formatWeight(amount, unit);
}
