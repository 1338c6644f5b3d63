import type { BurnReading } from "../../../src/core/burn/burnReading";

/** A vessel of 70 mm burnt down in two cycles, looked at each hour: an hour an inch is 25.4 mm an hour. All invented. */
export const WIDTH = 70;
export const DONE: readonly BurnReading[] = [1, 2].flatMap((cycle) =>
  [60, 120, 180, 240].map((minutes, i) => ({
    ...{ cycle, minutes, flame: 25, pool: [25, 50, 70, 70][i] as number },
    ...{ depth: 70 - 30 * cycle, soot: "none", glass: 45 },
  })),
);
/** The same with one reading changed. */
export const withReading = (at: number, change: Partial<BurnReading>): BurnReading[] =>
  DONE.map((one, i) => (i === at ? { ...one, ...change } : one));
