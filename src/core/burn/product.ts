import { wrong } from "../check/wrong";

export const PRODUCTS = ["container", "tea light"] as const;
export type Product = (typeof PRODUCTS)[number];

const SPELLINGS: readonly (readonly [Product, RegExp])[] = [
  ["container", /^containers?( candles?)?$/i],
  ["tea light", /^tea[\s-]?lights?( candles?)?$/i],
];

/** The product that a text names, in the usual spellings. */
export function productOf(name: string, text: string): Product {
  const found = SPELLINGS.find(([, spelling]) => spelling.test(text.trim()));
  if (found) return found[0];
  throw wrong(name, `"${text.slice(0, 40)}" is not known here; write container or tea light`);
}
