import { type HeadingBasis, withoutBasis } from "./headingBasis";
import { isWordToo, unitOf } from "./headingUnit";
import { bareHeading, bracketed } from "./tidyHeading";

/** A heading in words that mean one thing each, without its unit. A sign of per cent is a word. */
export interface HeadingWords {
  readonly words: readonly string[];
  /** What stands in brackets and is no unit. */
  readonly aside: readonly string[];
  /** What it says a share is of; undefined when it says nothing of it. */
  readonly basis: HeadingBasis | undefined;
}

/** What a candle is poured into, as headings call one. */
export const VESSEL_WORDS = ["vessel", "container", "jar", "tin", "glass", "tumbler", "mug", "bowl", "cup"] as const;

const ones = [...VESSEL_WORDS, "candle", "unit", "piece", "pc", "one"];

/** Words that mean the same; the first stands for all. */
const SAME: readonly (readonly [meaning: string, ...forms: string[]])[] = [
  ["each", "ea", "apiece", "single", "one", ...ones.flatMap((one) => [`per ${one}`, `in one ${one}`, `of one ${one}`])],
  [
    "scent",
    ...["fragrance oil", "fragrance oils", "scent oil", "frag oil", "perfume oil", "aroma oil", "essential oil"],
    ...["fragrance", "fragrances", "frag", "scents", "fo", "f o", "eo", "oil", "oils", "aroma", "perfume", "parfum"],
  ],
  [
    "load",
    "loads",
    "loading",
    "usage",
    "usage rate",
    "usage level",
    "use level",
    "use rate",
    "load rate",
    "load level",
    "dosage",
  ],
  ["%", "percent", "per cent", "percentage", "pct", "perc"],
  [
    "maximum",
    ...["max", "maximal", "most", "at most", "up to", "upto", "highest", "upper", "upper limit", "limit", "limits"],
    ...["cap", "ceiling", "no more than", "not more than", "not over", "not above", "not to exceed", "do not exceed"],
    ...["recommended", "recommendation", "recommend", "rec", "suggested", "advised", "allowed", "allowable"],
    ...[
      "allowance",
      "permitted",
      "permissible",
      "threshold",
      "maximum limit",
      "maximum allowed",
      "maximum recommended",
    ],
  ],
  ["minimum", "min", "least", "at least", "lowest", "lower"],
  ["weight", "wt", "wgt", "weights", "wts", "mass"],
  ["water", "h2o"],
  ["wax", "waxes"],
  ["number", "no", "nr", "num", "nos"],
  ["quantity", "qty", "qnty", "qnt", "quant", "quantities"],
  ["temperature", "temp", "temps", "tmp", "temperatures"],
  ["melt", "melting"],
  ["pour", "pouring"],
  ["stir", "stirring", "mix", "mixing"],
  ["cure", "curing"],
  ["day", "days"],
  ["flash point", "flashpoint", "flashpt", "flash pt", "fp", "f p"],
  ["height", "fill line", "fill level", "fill height"],
  // Weighed with what it is poured into.
  [
    "gross",
    ...VESSEL_WORDS.flatMap((one) =>
      ["incl", "including", "with", "and", "plus"].flatMap((joins) => [`${joins} ${one}`, `${joins} the ${one}`]),
    ),
  ],
  ["", "to the fill line", "to fill line", "to the line", "to line"],
];
const MEANINGS = new Map(SAME.flatMap(([meaning, ...forms]) => forms.map((form) => [form, meaning] as const)));
const FORMS = new RegExp(`(?<= )(${[...MEANINGS.keys()].sort((a, b) => b.length - a.length).join("|")})(?= )`, "g");

/** Tables are matched after every edit, mostly with the headings of the time before. */
const MOST_KNOWN = 2000;
const known = new Map<string, HeadingWords>();

/** The words of a heading. */
export function headingWords(heading: string): HeadingWords {
  const before = known.get(heading);
  if (before) return before;
  const words = wordsIn(heading);
  if (known.size >= MOST_KNOWN) known.clear();
  known.set(heading, words);
  return words;
}

function wordsIn(heading: string): HeadingWords {
  const brackets = bracketed(heading);
  const percent = brackets.some((words) => words.includes("%")) ? " %" : "";
  const isUnit = (words: string) => unitOf(words) !== undefined && !("unknown" in (unitOf(words) as object));
  const notUnits = brackets.filter((words) => !isUnit(words) && !/^mins?\.?$/i.test(words));
  const bare = meaningsOf(bareHeading(heading) + percent);
  const aside = meaningsOf(notUnits.join(" ").replace(/%/g, " "));
  const isShare = /(^| )(%|load|maximum|share)( |$)/.test(`${bare} ${aside}`);
  const split = (words: string) => words.split(" ").filter((word) => word !== "");
  const inBare = isShare ? withoutBasis(split(bare), true) : { words: split(bare), said: [] };
  const inAside = withoutBasis(split(aside), isShare);
  const [basis, ...more] = new Set([...inBare.said, ...inAside.said]);
  return { words: inBare.words, aside: inAside.words, basis: more.length > 0 ? "unclear" : basis };
}

const PLUS_VESSEL = new RegExp(`[+&](?=\\s?(?:${VESSEL_WORDS.join("|")})\\b)`, "g");

/** Text as words that mean one thing each, with one space between them. */
function meaningsOf(text: string): string {
  const parts = text
    .replace(/(\p{Ll}{2})(\p{Lu})/gu, "$1 $2") // FillWeight
    .toLowerCase()
    .replace(/(?<=\b\p{L})\.(?=\p{L}\b)/gu, "") // F.O.
    .replace(/(?<=\p{L}{3})(?=\d{1,2}\b)/gu, " ") // Load2
    .replace(/#/g, " number ")
    .replace(/\+ ?[/,]? ?[-−–]|±/g, " change ")
    .replace(PLUS_VESSEL, " plus ")
    .replace(/\b(of|in|by|to|on)\b.*/u, (behind) => behind.replace(/[+&]/g, " and "))
    .replace(/(\p{L}*) ?\/ ?(\p{L}+)/gu, (_, a, b) => `${a} ${isOne(b) && !isOne(a) ? "per" : ""} ${b}`)
    .match(/[\p{L}\p{N}]+|%/gu);
  const words = withoutUnits(parts ?? []);
  const joined = ` ${words.join(" ")} `.replace(FORMS, (form) => MEANINGS.get(form) as string);
  // `Fragrance oil scent` is one thing.
  return joined
    .replace(/ (\S+)(?: \1)+(?= )/g, " $1")
    .replace(/\s+/g, " ")
    .trim();
}

const isOne = (word: string): boolean => ones.some((one) => word === one || word === `${one}s`);

/** Words without units and what leads to them: `per kg`, `in grams`, `grams of`. */
function withoutUnits(words: readonly string[]): string[] {
  const left: string[] = [];
  for (const [i, word] of words.entries()) {
    if (isUnitAt(words, i)) {
      while (/^(per|in|fl|fluid|\d+)$/.test(left.at(-1) ?? "")) left.pop();
    } else if (!(word === "of" && i > 0 && left.length === 0)) left.push(word);
  }
  return left;
}

/** Whether a word of a heading is a unit: a weight anywhere, another one at the end. */
function isUnitAt(words: readonly string[], i: number): boolean {
  const unit = unitOf(words[i] as string);
  if (unit === undefined || "unknown" in unit) return false;
  if ("weight" in unit) return true;
  return i > 0 && (i === words.length - 1 || isUnitAt(words, i + 1)) && !isWordToo(words[i] as string);
}
