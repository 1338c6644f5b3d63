import { type BestFit, type Field, type Reads, wordsOf } from "./field";
import { headingUnit } from "./headingUnit";
import { type HeadingWords, headingWords } from "./headingWords";
import { measureFits } from "./measures";

/** A field that a heading may name. */
export interface Fit<F extends string> {
  readonly field: F;
  readonly score: number;
  /** Whether the heading does not say it plainly: it is to be asked about. */
  readonly isUnsure: boolean;
}

type Fields<F extends string> = Readonly<Record<F, Field>>;

/** For each field the place of its column among the headings, from 0. A field without a column is left out. */
export type ColumnsOf<F extends string> = Readonly<Partial<Record<F, number>>>;

/** Tables are matched after every edit, mostly with the headings of the time before. */
const MOST_KNOWN = 2000;
const known = new WeakMap<object, Map<string, readonly Fit<string>[]>>();

/** The fields that a heading may name, each with how well its words fit. */
export function fitsOf<F extends string>(fields: Fields<F>, heading: string): readonly Fit<F>[] {
  const own = known.get(fields) ?? new Map<string, readonly Fit<F>[]>();
  known.set(fields, own);
  const before = own.get(heading) as readonly Fit<F>[] | undefined;
  if (before) return before;
  const fits = fitsIn(preparedOf(fields), heading);
  if (own.size >= MOST_KNOWN) own.clear();
  own.set(heading, fits);
  return fits;
}

function fitsIn<F extends string>(fields: readonly Prepared<F>[], heading: string): Fit<F>[] {
  const [read, unit] = [headingWords(heading), headingUnit(heading)];
  const found = fields.flatMap((one) => {
    const worth = measureFits(one.reads, unit, read);
    if (worth === 0) return [];
    let top: Fit<F> | undefined;
    for (const [rank, { word, best }] of one.words.entries()) {
      const fit = fitOf(read, word, best, one);
      const score = fit === 0 ? 0 : fit * worth - rank;
      if (score > (top?.score ?? 0)) top = { field: one.field, score, isUnsure: best === "unsure" };
    }
    return top ? [top] : [];
  });
  return found.some(({ isUnsure }) => !isUnsure) ? found.filter(({ isUnsure }) => !isUnsure) : found;
}

/** A field as headings are compared with it: its words taken apart once. */
interface Prepared<F extends string> {
  readonly field: F;
  readonly reads: Reads;
  readonly words: readonly { readonly word: readonly string[]; readonly best: BestFit }[];
  /** Words beside which its own mean something else. */
  readonly others: ReadonlySet<string>;
}
const prepared = new WeakMap<object, readonly Prepared<string>[]>();

function preparedOf<F extends string>(fields: Fields<F>): readonly Prepared<F>[] {
  const before = prepared.get(fields) as readonly Prepared<F>[] | undefined;
  if (before) return before;
  const made = (Object.entries<Field>(fields) as [F, Field][]).map(([field, one]) => ({
    field,
    reads: one.reads,
    words: wordsOf(one).map(([word, best]) => ({ word: headingWords(word).words, best })),
    others: new Set([...OTHER, ...(CLASH[one.reads]?.split(" ") ?? []), ...(one.not ?? [])]),
  }));
  prepared.set(fields, made);
  return made;
}

/**
 * Matches columns by their headings: a heading that is a field's word beats one that begins with it, which beats one
 * that holds it; among equals the earlier word, then the earlier column. No column serves two fields.
 */
export function columnsFor<F extends string>(fields: Fields<F>, headings: readonly string[]): ColumnsOf<F> {
  const found = headings.flatMap((heading, column) => fitsOf(fields, heading).map((fit) => ({ ...fit, column })));
  found.sort((a, b) => b.score - a.score || a.column - b.column);
  const columns = new Map<F, number>();
  for (const { field, column } of found) {
    if (!columns.has(field) && ![...columns.values()].includes(column)) columns.set(field, column);
  }
  return Object.fromEntries(columns) as ColumnsOf<F>;
}

/** How well a heading fits a word of a field: far enough apart for the places of the words between them. */
const FITS = { same: 900, otherOrder: 800, begins: 600, alone: 500, holds: 300, unsure: 100 } as const;

/** Words that make a heading something else than what its other words say: a limit of it, its cost, one of a pair. */
const OTHER: ReadonlySet<string> = new Set(
  [
    "maximum minimum range each per total totals sum subtotal cost costs price prices volume height width diameter",
    "depth length shape colour color check checked ok status actual real weighed measured made poured sold done used",
    "left note notes remark remarks comment comments date due until start end old last previous prior before then",
    "former change supplier brand url link photo picture image lot label labels sticker lid lids wick wicks box boxes",
    "warning tare empty gross shipping postage margin discount tax vat fee loss waste reject rejects yield pot pots dye",
    "dyes pigment mica additive additives uv dozen dozens case cases crate crates",
  ]
    .join(" ")
    .split(" "),
);

/** Words beside which a measure is another one. */
const CLASH: Readonly<Partial<Record<Reads, string>>> = {
  name: "weight % load quantity number count amount factor water fill temperature time minutes point melt cure day flash stir rate ratio share basis strength family unit units uom",
  count: "% load wax scent water factor temperature time day fill",
  weight: "% load factor temperature time day ratio number count quantity batch",
  factor: "scent load weight",
  share: "weight factor temperature time day quantity number count water fill point ratio basis hand stock size",
  temperature: "% weight time minutes",
  length: "% weight time temperature count",
  time: "% weight temperature",
  days: "% weight temperature",
  date: "% weight temperature quantity count",
  money: "% quantity hand",
};

function fitOf(
  { words, aside, basis }: HeadingWords,
  word: readonly string[],
  best: BestFit,
  { reads, others }: Pick<Prepared<string>, "reads" | "others">,
): number {
  // A limit of wax is the wax's, one of the total the product's.
  const isLimit =
    basis !== undefined && basis !== "unclear" && (words.includes("maximum") || aside.includes("maximum"));
  const of = isLimit ? [basis === "of wax" ? "wax" : "product"] : [];
  if (!word.every((one) => words.includes(one) || aside.includes(one) || of.includes(one))) return 0;
  const within = (all: readonly string[], isStopped: boolean): number => {
    const rest = [...all];
    for (const one of word) {
      if (!rest.includes(one)) return 0;
      rest.splice(rest.indexOf(one), 1);
    }
    if (reads === "share" && rest.includes("%")) rest.splice(rest.indexOf("%"), 1);
    if (isStopped || rest.some((one) => others.has(one))) return 0;
    const isInOrder = ` ${all.join(" ")} `.startsWith(` ${word.join(" ")} `);
    if (rest.length === 0) return best === "same" && !isInOrder ? FITS.otherOrder : FITS[best];
    if (best !== "same") return best === "unsure" ? FITS.unsure - 10 : 0;
    return isInOrder ? FITS.begins : FITS.holds;
  };
  return Math.max(
    within(
      words,
      [...aside, ...of].some((one) => OTHER.has(one)),
    ),
    aside.length + of.length > 0 ? within([...words, ...aside, ...of], false) : 0,
  );
}
