import { sameName } from "../sameName";

/** No name of a vessel, a scent or an item is longer; letters of whole texts are not compared. */
const LONGEST = 60;

/** A name among those that are known which another one may be a slip of; undefined where none is near, or several are. */
export function nearName(name: string, known: readonly string[]): string | undefined {
  const typed = sameName(name);
  if (typed.length > LONGEST) return undefined;
  // One name in two spellings is one name.
  const others = [...new Map(known.map((one) => [sameName(one), one])).values()].filter((one) =>
    isOfOneSize(typed, one),
  );
  const near = others.flatMap((one) => {
    const most = Math.min(typed.length, one.length) / 4 + 0.5;
    const steps = stepsBetween(typed, sameName(one), most);
    return steps <= most ? [{ one, steps }] : [];
  });
  const least = Math.min(...near.map(({ steps }) => steps));
  const nearest = near.filter(({ steps }) => steps === least);
  // `Amber8` is Amber jar, where it is the only one that begins so.
  const stem = typed.replace(/[^\p{L}]+$/u, "");
  const begun = stem.length < 4 ? [] : others.filter((one) => sameName(one).startsWith(stem));
  const [first, ...more] = nearest.length > 0 ? nearest.map(({ one }) => one) : begun;
  return more.length === 0 ? first : undefined;
}

/** Names with other figures are of other sizes. */
function isOfOneSize(one: string, other: string): boolean {
  const [a, b] = [one, other].map((name) => name.replace(/\P{N}/gu, ""));
  return a === "" || b === "" || a === b;
}

/** `. Is it Amber jar?`; empty where no name is near. */
export function isItWords(name: string, known: readonly string[]): string {
  const near = nearName(name, known);
  return near === undefined ? "" : `. Is it ${near}?`;
}

/**
 * How many letters are put in, left out, changed or swapped with the next one between two words; any number above the
 * most that matters where it is more, found early: long tables are read at every change.
 */
function stepsBetween(one: string, other: string, most: number): number {
  if (Math.abs(one.length - other.length) > most) return Number.POSITIVE_INFINITY;
  const rows: number[][] = [Array.from({ length: other.length + 1 }, (_, i) => i)];
  const at = (i: number, j: number) => rows[i]?.[j] ?? Number.POSITIVE_INFINITY;
  for (let i = 1; i <= one.length; i++) {
    rows.push([i]);
    for (let j = 1; j <= other.length; j++) {
      const isSwapped = one[i - 1] === other[j - 2] && one[i - 2] === other[j - 1];
      const changed = at(i - 1, j - 1) + (one[i - 1] === other[j - 1] ? 0 : 1);
      const swapped = isSwapped ? at(i - 2, j - 2) + 1 : Number.POSITIVE_INFINITY;
      (rows[i] as number[]).push(Math.min(at(i - 1, j) + 1, at(i, j - 1) + 1, changed, swapped));
    }
    // A swap looks two rows back.
    if (Math.min(...(rows[i] as number[]), ...(rows[i - 1] as number[])) > most) return Number.POSITIVE_INFINITY;
  }
  return at(one.length, other.length);
}
