/**
 * What is said of a wick, in sentences that the pane puts together as texts and the sheet of a series as formulas: each
 * part is a text there, and the formula of one here.
 */

type Part = string | number;
/** Puts the words of a sentence and what stands between them together. */
export type Say = (words: TemplateStringsArray, ...parts: readonly Part[]) => string;

export const asText: Say = (words, ...parts) => words.map((text, i) => `${text}${parts[i] ?? ""}`).join("");
export const asFormula: Say = (words, ...parts) =>
  words.flatMap((text, i) => [...(text === "" ? [] : [`"${text}"`]), ...parts.slice(i, i + 1)]).join("&");

/** @param first the first candle of which it holds, and what was seen of it */
export const beyondIn = (say: Say, failed: Part, all: Part, first: Part) =>
  say`beyond the limits in ${failed} of ${all}: ${first}`;
export const nothingYet = (say: Say, first: Part) => say`nothing can be said yet: ${first}`;
/** @param most percent of all candles that may have a fault */
export const nothingBeyond = (say: Say, passed: Part, most: Part) =>
  say`nothing beyond the limits seen in ${passed} of ${passed}; a fault in up to ${most} % of all is still possible (95 % confidence)`;
export const toLookAt = (say: Say, remarked: Part, first: Part) => say`; to look at in ${remarked}: ${first}`;

export const ANOTHER_WICK = "another wick, or another load, in a series of its own";
/** @param candles the word for so many */
export const finish = (say: Say, open: Part, candles: Part) => say`finish ${open}${candles}`;
export const burnMore = (say: Say, more: Part, candles: Part, wick: Part) => say`${more} more${candles} of ${wick}`;
export const couldStill = (say: Say, most: Part) => say`: if none shows a fault, up to ${most} % could still have one`;
