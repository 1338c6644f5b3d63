import { gramsIn } from "../core/units/weight";
import type { WeightUnit } from "./settings";

/** Units as headings write them, in lower case and without a dot at the end. */
const WEIGHTS: Readonly<Record<WeightUnit, readonly string[]>> = {
  g: ["g", "gr", "gm", "gms", "gram", "grams", "gramme", "grammes"],
  kg: ["kg", "kgs", "kilo", "kilos", "kilogram", "kilograms", "kilogramme", "kilogrammes"],
  oz: ["oz", "ozs", "ounce", "ounces"],
  lb: ["lb", "lbs", "pound", "pounds"],
};
const VOLUMES =
  /^(mls?|l|cl|lit(er|re)s?|millilit(er|re)s?|fl\.? ?oz|floz|fl(uid)? ounces?|cups?|pints?|gal|gallons?|in3|cm3|cc)$/;
const LENGTHS = /^(mm|cm|in|inch|inches)$/;

/** The unit that a heading names: a weight, or words for something that no weight has, or words that are not known. */
export type HeadingUnit =
  | { readonly weight: WeightUnit }
  | { readonly other: "a volume" | "a length"; readonly words: string }
  | { readonly unknown: string };

/**
 * The unit in a heading's brackets, behind its `per`, or as its last word: `Fill (g)`, `Price per kg (EUR)`,
 * `On hand kg`. Undefined when it names none.
 */
export function headingUnit(heading: string): HeadingUnit | undefined {
  const bracketed = [...heading.matchAll(/\((.*?)\)/g)].map(([, words]) => words as string);
  const bare = heading.replace(/\(.*?\)/g, " ").trim();
  const last = / (\S+)$/.exec(bare)?.[1];
  const named = [...bracketed, ...(last ? [last] : [])].map(unitOf);
  return (
    named.find((unit) => unit && "weight" in unit) ??
    named.find((unit) => unit && "other" in unit) ??
    // The last word of a heading is a word like any other; what stands in brackets is meant as something.
    named.slice(0, bracketed.length).find((unit) => unit !== undefined)
  );
}

function unitOf(words: string): HeadingUnit | undefined {
  const whole = plainWords(words);
  if (whole === "") return undefined;
  if (VOLUMES.test(whole)) return { other: "a volume", words: words.trim() };
  if (LENGTHS.test(whole)) return { other: "a length", words: words.trim() };
  // `EUR/kg`, `g or pieces`: one of the words is the unit. Those of a fluid ounce are none.
  const parts = /\bfl(uid)?\b/.test(whole) ? [] : whole.split(/[^\p{L}\d]+/u);
  for (const unit of Object.keys(WEIGHTS) as WeightUnit[]) {
    if (parts.some((part) => WEIGHTS[unit].includes(part))) return { weight: unit };
  }
  return { unknown: words.trim() };
}

const plainWords = (words: string): string => words.trim().toLowerCase().replace(/^per /, "").replace(/\.$/, "");

/** How many of the unit `to` one of a heading's unit is; 1 where it names no weight. */
export function weightRatio(unit: HeadingUnit | undefined, to: WeightUnit): number {
  if (!unit || !("weight" in unit) || unit.weight === to) return 1;
  return gramsIn("unit", unit.weight) / gramsIn("unit", to);
}
