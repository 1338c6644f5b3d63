import type { KnownItems } from "../../runsheet/record/receipt";
import { sameName } from "../../runsheet/sameName";
import type { WeightUnit } from "../../runsheet/settings";
import { type AmountOf, amountWords } from "../words/tracing";

/**
 * How amounts of items are written out: the moves do not say what is weighed and what is counted, the other tables do.
 * @param written the unit of the weights in the moves
 */
export function amountsOf({ weighed, counted }: KnownItems, written: WeightUnit): AmountOf {
  return (item, amount) => {
    const key = sameName(item);
    return amountWords(amount, written, weighed.has(key), counted.has(key));
  };
}
