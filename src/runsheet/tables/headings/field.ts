/** What stands in the cells of a field. A heading that says another measure is another field's. */
export type Reads =
  | "name"
  | "words"
  | "count"
  | "amount"
  | "weight"
  | "factor"
  | "share"
  | "parts"
  | "temperature"
  | "length"
  | "time"
  | "days"
  | "date"
  | "money";

/** One field of a table: what it is called, and in which words headings say it. */
export interface Field {
  /** In front of a person; a heading may say it so too. */
  readonly name: string;
  readonly reads: Reads;
  /** Words that name it in a heading, alone or among others; the earlier the better. */
  readonly aliases: readonly string[];
  /** Words that name it only where the heading says nothing else. */
  readonly alone?: readonly string[];
  /** Words that may name it: taken where nothing says it better, and asked about. */
  readonly unsure?: readonly string[];
  /** Words beside which its own mean something else. */
  readonly not?: readonly string[];
}

/** How well a word of a field fits at best. */
export type BestFit = "same" | "alone" | "unsure";

/** The words of a field with how well each fits at best; the earlier the better. */
export function wordsOf({ name, aliases, alone = [], unsure = [] }: Field): [word: string, best: BestFit][] {
  const each = (words: readonly string[], best: BestFit) => words.map((word): [string, BestFit] => [word, best]);
  return [...each([name.toLowerCase(), ...aliases], "same"), ...each(alone, "alone"), ...each(unsure, "unsure")];
}
