import { lengthUnitOf, temperatureUnitOf, type UnitOf, unitKindOf, weightUnitOf } from "../../../core/units/spellings";
import { bareHeading, bracketed } from "./tidyHeading";

const TIMES = /^(secs?|seconds?|mins?|minutes?|h|hrs?|hours?|d|days?|wks?|weeks?|months?)$/;
/** Words in brackets that say what is meant, and are no unit. */
const WORDING =
  /^(waxe?s?|and|or|with|without|plus|incl(uding)?|scents?|fragrances?|oils?|fo|water|fill|weight|wt|per|each|one|of|total|net|to|the|up|line|candles?|jars?|vessels?|containers?|glass|only|max(imum)?|min(imum)?)$/;

/** Whether a unit is a word of headings too: a paper cup, a flash pt. */
export const isWordToo = (word: string): boolean => /^(cups?|pts?)\.?$/i.test(word);

/** The unit that a heading names: a weight, or something that is no weight, or words that are not known. */
export type HeadingUnit =
  | { readonly weight: UnitOf<"weight"> }
  | { readonly other: keyof typeof NO_WEIGHT; readonly words: string }
  | { readonly unknown: string };

/** What a heading may name that is no weight, and what to do about it. */
export const NO_WEIGHT = {
  "a volume": "a volume and not a weight; weigh it, or use POUR.FILLBYVOLUME",
  "a length": "a length and not a weight; choose another column",
  "a temperature": "a temperature and not a weight; choose another column",
  "a time": "a time and not a weight; choose another column",
  "several units at once": "several units at once; write it for one",
} as const;

/** Words that belong to the unit behind them: `per 100 g`, `fl oz`. */
const BEFORE = /^(per|fl|fluid|\d[\d.,]*)\.?$/i;

/**
 * The unit in a heading's brackets, behind its `per`, as its last word or, where it is a weight, as any word:
 * `Fill (g)`, `Price per kg (EUR)`, `On_hand_kg`, `Grams of water`. Undefined when it names none.
 */
export function headingUnit(heading: string): HeadingUnit | undefined {
  const inBrackets = bracketed(heading).flatMap((words) => unitOf(words) ?? []);
  const words = bareHeading(heading).split(/[\s/]+/);
  const inWords = words.flatMap((_, i) => {
    let from = i;
    while (from > 0 && BEFORE.test(words[from - 1] as string)) from--;
    const unit = unitOf(words.slice(from, i + 1).join(" "));
    const isLast = i === words.length - 1 && i > 0 && !isWordToo(words[i] as string);
    // A word of a heading is a word like any other: what it must mean is a unit, the others only at its end.
    return unit && (isLast || "weight" in unit || from < i) ? [unit] : [];
  });
  const named = [...inBrackets, ...inWords];
  return (
    named.find((unit) => "other" in unit) ??
    named.find((unit) => "weight" in unit) ??
    // What stands in brackets is meant as something.
    inBrackets[0]
  );
}

/** The unit that words name by themselves; undefined where they name none and say something else. */
export function unitOf(words: string): HeadingUnit | undefined {
  const parts = words
    .toLowerCase()
    .split(/[^\p{L}\d.]+/u)
    .map((part) => part.replace(/\.$/, ""))
    .filter((part) => part !== "");
  if (parts.every((part) => WORDING.test(part))) return undefined;
  if (parts.some((part) => /^fl(uid)?$/.test(part) || unitKindOf(part) === "volume"))
    return { other: "a volume", words };
  if (parts.every((part) => lengthUnitOf(part))) return { other: "a length", words };
  if (parts.every((part) => temperatureUnitOf(part) || /^deg(ree)?s?$/.test(part)))
    return { other: "a temperature", words };
  if (parts.every((part) => TIMES.test(part))) return { other: "a time", words };
  // `EUR/kg`, `g or pieces`: one of the words is the unit.
  const weights = new Set(parts.flatMap((part) => weightUnitOf(part) ?? []));
  const [weight] = weights;
  if (weight === undefined) return { unknown: words };
  return weights.size > 1 || parts.some((part) => /^\d/.test(part) && part !== "1")
    ? { other: "several units at once", words }
    : { weight };
}
