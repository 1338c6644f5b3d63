import { same } from "../same";

/** A rule that the file has: its place there, and whether nothing of it changed, or only what `moved` names. */
export interface Match {
  readonly at: number;
  readonly isAsWas: boolean;
}

/**
 * For each rule as it is now, the one of the file that it still is, wherever its cells are now; undefined for one that
 * was changed or is new. No rule of the file is taken twice.
 */
export function matched<T extends object>(
  before: readonly T[],
  now: readonly T[],
  moved: readonly (keyof T)[],
): (Match | undefined)[] {
  const free = new Set(before.keys());
  const still = (rule: T): T => ({ ...rule, ...Object.fromEntries(moved.map((key) => [key, null])) });
  const take = (isSame: (old: T) => boolean): number | undefined => {
    for (const at of free) {
      if (!isSame(before[at] as T)) continue;
      free.delete(at);
      return at;
    }
    return undefined;
  };
  const whole = now.map((rule) => take((old) => same(old, rule)));
  return now.map((rule, i) => {
    const exact = whole[i];
    if (exact !== undefined) return { at: exact, isAsWas: true };
    const wanted = still(rule);
    const at = take((old) => same(still(old), wanted));
    return at === undefined ? undefined : { at, isAsWas: false };
  });
}
