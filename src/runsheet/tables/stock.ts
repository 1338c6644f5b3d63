import { formerItems } from "./items";

/** What was on hand, and the packs to buy. */
export const STOCK = formerItems("Stock", "Stock, as Items: what is on hand.", [["item"], ["onHand"]]);
