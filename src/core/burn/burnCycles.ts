import { plain } from "../check/plain";

const LONGEST_UNSEEN = 90; // minutes: looked at each hour, half an hour either way

interface At {
  readonly cycle: number;
  readonly minutes: number;
}

/** One burn from lighting to putting out: its number, and the minutes at which it was looked at, in order. */
export interface Cycle {
  readonly cycle: number;
  readonly minutes: readonly number[];
}

/** The cycles of a candle, in order. */
export function cyclesOf(readings: readonly At[]): Cycle[] {
  const found = new Map<number, number[]>();
  for (const { cycle, minutes } of readings) found.set(cycle, [...(found.get(cycle) ?? []), minutes]);
  return [...found]
    .sort(([a], [b]) => a - b)
    .map(([cycle, minutes]) => ({ cycle, minutes: minutes.sort((a, b) => a - b) }));
}

/** The stretches of a cycle in which nobody looked at the candle for more than an hour and a half, in words. */
export function unseenStretches({ cycle, minutes }: Cycle): string[] {
  return minutes.flatMap((at, i) => {
    const before = i === 0 ? 0 : (minutes[i - 1] as number);
    if (at - before <= LONGEST_UNSEEN) return [];
    return [`cycle ${cycle} not looked at between ${plain(before)} and ${plain(at)} min`];
  });
}
