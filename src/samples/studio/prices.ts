import { lookUp } from "../layout";

/** What one gram or piece of an item costs: it stands once, on the sheet Items; a text where it is not known. */
export const priceOf = (item: string): string => lookUp("Items", "Price of one", "Item", item);

/** What so much of an item costs, a number; where it has no price that is said in place of it. */
export const costOf = (item: string, amount: string): string =>
  `IFERROR(${amount}*${priceOf(item)},${item}&": no price")`;

/** The first text that stands as a cost in the rows of a table that bear this name; #N/A where there is none. */
export const firstLack = (table: string, cost: string, key: string, name: string): string =>
  `INDEX(${table}[${cost}],MATCH(1,INDEX((${table}[${key}]=${name})*ISTEXT(${table}[${cost}])*(${table}[${cost}]<>""),0),0))`;
