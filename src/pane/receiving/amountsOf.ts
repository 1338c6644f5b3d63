import { amountWords } from "../../runsheet/amountWords";
import type { KnownItems } from "../../runsheet/record/receipt";
import { sameName } from "../../runsheet/sameName";
import type { WeightUnit } from "../../runsheet/settings";
import type { AmountOf } from "../words/tracing";

/**
 * How amounts of items are written out: the moves do not say what is weighed and what is counted, the other tables do.
 * @param written the unit of the weights in the moves
 */
export function amountsOf({ weighed, counted }: KnownItems, written: WeightUnit): AmountOf {
  return (item, amount) => {
    const key = sameName(item);
    const isWeighed = weighed.has(key);
    const use = isWeighed === counted.has(key) ? undefined : isWeighed ? "weight" : "count";
    return amountWords(amount, use, written);
  };
}
