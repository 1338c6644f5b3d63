import type { Basis } from "../../../core/scent/basis";

/** What a heading says that a share is of: unclear where that is neither the wax nor the whole. */
export type HeadingBasis = Basis | "unclear";

/** Words of headings, each of one meaning, and what was said among them of what a share is of. */
export interface WithoutBasis {
  readonly words: readonly string[];
  readonly said: readonly HeadingBasis[];
}

const setOf = (words: string): ReadonlySet<string> => new Set(words.split(" "));
const LEADS = setOf("of in by to on");
/** All that is poured; a mix is to be stirred among the words of headings. */
const WHOLE = setOf(
  "total whole all everything candle candles product products blend stir mixture batch batches fill pour recipe contents",
);
/** They say nothing alone. */
const WITH_OTHERS = setOf("the a your my this or weight finished final entire full complete net base soy coconut palm");
const JOINS = setOf("and plus with incl including");
/** What a share may be of without saying a basis: `% of scent` is the load. */
const NO_BASIS = setOf("scent load share maximum minimum %");

/** Takes out the words behind `of` and its like that say what a share is of. Where these are not known, it says so. */
export function withoutBasis(words: readonly string[], isShare: boolean): WithoutBasis {
  const left: string[] = [];
  const said: HeadingBasis[] = [];
  for (let i = 0; i < words.length; i++) {
    const word = words[i] as string;
    const phrase = LEADS.has(word) ? phraseAt(words, i + 1) : [];
    const basis = LEADS.has(word) ? basisIn(word, phrase, words[i + 1 + phrase.length]) : undefined;
    if (basis === undefined || (basis === "unclear" && !isShare)) left.push(word);
    else {
      said.push(basis);
      i += phrase.length;
    }
  }
  return { words: left, said };
}

/** The words from here on that may say what something is of; what is joined to them belongs to them. */
function phraseAt(words: readonly string[], from: number): string[] {
  const phrase: string[] = [];
  let isJoined = false;
  for (const [i, word] of words.slice(from).entries()) {
    const next = words[from + i + 1] ?? "";
    // `Of the weight of wax`.
    const isOf = word === "of" && phrase.length > 0 && phrase.every((one) => WITH_OTHERS.has(one));
    const isKnown = isOf || word === "wax" || WHOLE.has(word) || WITH_OTHERS.has(word);
    const isJoin = phrase.length > 0 && JOINS.has(word);
    const isAmong = word === "scent" && (JOINS.has(next) || phrase.length > 0);
    if (!(isKnown || isJoin || isAmong || (isJoined && !NO_BASIS.has(word)))) break;
    isJoined ||= isJoin;
    phrase.push(word);
  }
  return phrase;
}

function basisIn(lead: string, phrase: readonly string[], next: string | undefined): HeadingBasis | undefined {
  const [isWax, hasScent] = [phrase.includes("wax"), phrase.includes("scent")];
  const isWhole = phrase.some((word) => WHOLE.has(word));
  if (!isWax && !isWhole) {
    const isSomething = phrase.length > 0 || (next !== undefined && !NO_BASIS.has(next));
    return lead === "of" && isSomething ? "unclear" : undefined;
  }
  const isJoined = phrase.some((word) => JOINS.has(word));
  if (isJoined) return isWax && hasScent && !phrase.includes("or") ? "of total" : "unclear";
  // `Of candle wax`, `of wax scent`.
  if (isWax) return isWhole || hasScent || phrase.includes("or") ? "unclear" : "of wax";
  return phrase.includes("or") ? "unclear" : "of total";
}
