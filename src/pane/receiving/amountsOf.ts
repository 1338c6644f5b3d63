import { sameName } from "../../runsheet/sameName";
import type { WeightUnit } from "../../runsheet/settings";
import type { ByHand } from "../givenTables";
import type { ReadTables } from "../state/useTables";
import { type AmountOf, amountWords } from "../words/tracing";
import { namedItems } from "./namedItems";

/**
 * How amounts of items are written out: the moves do not say what is weighed and what is counted, the other tables do.
 * @param written the unit of the weights in the moves
 */
export function amountsOf(read: ReadTables, byHand: ByHand, unit: WeightUnit, written: WeightUnit): AmountOf {
  const { weighed, counted } = namedItems(read, byHand, unit);
  return (item, amount) => {
    const key = sameName(item);
    return amountWords(amount, written, weighed.has(key), counted.has(key));
  };
}
