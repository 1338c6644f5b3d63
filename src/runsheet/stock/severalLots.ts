import { sameName } from "../sameName";

/** The lots that may stand in one cell: `S-1, S-2`, `S-1 and S-2`. One, where there is only one. */
export const severalLots = (text: string): string[] =>
  text.split(/\s*(?:[,;+&/\n]|\band\b)\s*/i).filter((lot) => lot !== "");

/** Whether a text that is no lot of that name names it among others; rather once too often, for a recall misses none. */
export function isAmong(lot: string, text: string): boolean {
  const [own, all] = [wordsIn(lot), wordsIn(text)];
  return own.length > 0 && own.length < all.length && all.some((_, i) => own.every((word, k) => all[i + k] === word));
}

const wordsIn = (text: string): string[] => severalLots(text).flatMap((lot) => sameName(lot).split(" "));
