import { formerItems } from "./items";

/** What an item costs. */
export const PRICES = formerItems("Prices", "Prices, as Items: the cost.", [["item"], ["price"]]);
