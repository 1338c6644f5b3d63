/**
 * What the maker did not touch goes back as the very object that the file gave. Univer cannot say what was touched, so
 * what it holds now is compared with what it was given at the opening, both read in the same way.
 */

import { same } from "../../../file/same";
import { matched } from "../../../file/write/matched";

/** Things by the ids that Univer keeps them under, in order. */
export type ById<T> = ReadonlyMap<string, T>;

/** One thing: what changed of it is as it is now, all else as the file had it. `together` changes as one. */
export function mended<T extends object>(original: T, before: T, now: T, together: readonly (keyof T)[] = []): T {
  if (same(before, now)) return original;
  const differs = (key: keyof T) => !same(before[key], now[key]);
  const asOne = together.some(differs);
  const result = { ...original };
  for (const key of new Set([...Object.keys(before), ...Object.keys(now)]) as Set<keyof T & string>) {
    if (!(asOne && together.includes(key)) && !differs(key)) continue;
    if (now[key] === undefined) delete result[key];
    else result[key] = now[key];
  }
  return result;
}

/** All things of a kind. What of the file Univer was not given stays as it is, behind what it stood behind. */
export function mendedAll<T extends object>(
  originals: ById<T>,
  before: ById<T>,
  now: ById<T>,
  together: readonly (keyof T)[] = [],
): readonly T[] {
  const all = new Map(
    [...now].map(([id, item]) => {
      const old = before.get(id);
      const original = originals.get(id);
      return [id, old && original ? mended(original, old, item, together) : item];
    }),
  );
  const list = [...all.values()];
  let place = 0;
  for (const [id, original] of originals) {
    const item = all.get(id);
    if (!before.has(id)) list.splice(place++, 0, original);
    else if (item) place = list.indexOf(item) + 1;
  }
  return list;
}

/**
 * Things by the ids that Univer was given them under. In a duplicate of a sheet they have ids of their own and are known
 * by what they say; `moved` may be different.
 */
export function byFileIds<T extends object>(now: ById<T>, before: ById<T>, moved: readonly (keyof T)[]): ById<T> {
  const unknown = [...now].filter(([id]) => !before.has(id));
  if (unknown.length === 0) return now;
  const gone = [...before].filter(([id]) => !now.has(id));
  const things = (all: readonly (readonly [string, T])[]) => all.map(([, thing]) => thing);
  const matches = matched(things(gone), things(unknown), moved);
  const ids = new Map(unknown.map(([id], i) => [id, gone[matches[i]?.at ?? -1]?.[0] ?? id]));
  return new Map([...now].map(([id, thing]) => [ids.get(id) ?? id, thing]));
}

/** Things of the file by the ids that they are given in Univer. */
export const numbered = <T>(letter: string, all: readonly T[]): Map<string, T> =>
  new Map(all.map((one, i) => [`${letter}${i}`, one]));

/** The list of the file where this one holds the very same things. */
export const asListed = <T>(originals: readonly T[], all: readonly T[]): readonly T[] =>
  all.length === originals.length && all.every((one, i) => one === originals[i]) ? originals : all;
