const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;

/** How far apart the states of a workbook lie that are worth going back to: close ones of late, few of long ago. */
const AGES = [0, MINUTE, 10 * MINUTE, HOUR, 4 * HOUR, DAY, 3 * DAY, 7 * DAY, 30 * DAY];

export interface Dated {
  readonly number: number;
  readonly time: number;
  /** Whether someone marked it as one to go back to. */
  readonly isMarked?: boolean;
}

/**
 * The states that need not be kept any more: all but the newest, the marked ones of late, and the oldest of each span
 * of ages, so that each span has one as time goes on.
 */
export function superfluous<S extends Dated>(states: readonly S[], now: number, marked = 5): S[] {
  const newestFirst = [...states].sort((a, b) => b.number - a.number);
  const kept = new Set(newestFirst.slice(0, 1));
  for (const state of newestFirst.filter(({ isMarked }) => isMarked).slice(0, marked)) kept.add(state);
  const oldestOf = new Map<number, S>();
  for (const state of newestFirst) oldestOf.set(spanOf(now - state.time), state);
  for (const state of oldestOf.values()) kept.add(state);
  return newestFirst.filter((state) => !kept.has(state));
}

/** A clock that was set back makes states of the future: they count as new. */
const spanOf = (age: number) => AGES.filter((from) => age >= from).length;
