import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { freeName } from "../../src/tryout/keep/freeName";
import { type Dated, superfluous } from "../../src/tryout/keep/thin";
import { sizeOf, when, whenApart } from "../../src/tryout/keep/when";

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;

/** Lives through edits at these times, each followed by a thinning; the ages of what is left at the end. */
function agesAfter(times: readonly number[], isMarked = (_: number) => false): number[] {
  let states: Dated[] = [];
  for (const [i, time] of times.entries()) {
    states.push({ number: i + 1, time, isMarked: isMarked(i) });
    const away = new Set(superfluous(states, time));
    states = states.filter((state) => !away.has(state));
  }
  const now = times.at(-1) ?? 0;
  return states.map(({ time }) => now - time).sort((a, b) => a - b);
}

const every = (step: number, until: number) => Array.from({ length: until / step + 1 }, (_, i) => i * step);

describe("the states that are left", () => {
  it("are few, and lie further apart the older they are, after a day of an edit each 20 s", () => {
    const ages = agesAfter(every(20_000, DAY));
    expect(ages.length).toBeLessThanOrEqual(10);
    expect(ages[0]).toBe(0);
    for (const [from, to] of [
      [MINUTE, 10 * MINUTE],
      [10 * MINUTE, HOUR],
      [HOUR, 4 * HOUR],
      [4 * HOUR, DAY + 1],
    ] as const) {
      expect(ages.some((age) => age >= from && age < to)).toBe(true);
    }
  });

  it("are one for each of the last days and weeks when somebody edits every day", () => {
    const ages = agesAfter(every(DAY, 60 * DAY));
    expect(ages.some((age) => age >= DAY && age <= 3 * DAY)).toBe(true);
    expect(ages.some((age) => age >= 7 * DAY && age <= 30 * DAY)).toBe(true);
  });

  it("always hold the newest, whatever the clock does", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 3 * DAY }), { minLength: 1, maxLength: 60 }), (times) => {
        const states = times.map((time, i) => ({ number: i, time }));
        const now = times.at(-1) ?? 0;
        expect(superfluous(states, now).map(({ number }) => number)).not.toContain(times.length - 1);
        expect(states.length - superfluous(states, now).length).toBeLessThanOrEqual(12);
      }),
      { numRuns: 200 },
    );
  });

  it("hold the last five that were marked", () => {
    const times = every(1000, 20_000);
    expect(agesAfter(times, (i) => i < 8)).toEqual(
      expect.arrayContaining([3, 4, 5, 6, 7].map((i) => 20_000 - i * 1000)),
    );
  });
});

describe("a free name", () => {
  it.each([
    ["Costs", [], "Costs"],
    ["Costs", ["Costs"], "Costs 2"],
    ["Costs", ["costs", "Costs 2"], "Costs 3"],
    ["Costs 2", ["Costs 2", "Costs"], "Costs 3"],
    ["Spring 2026", ["Spring 2026"], "Spring 2026 2"],
  ])("of %s beside %j is %s", (wished, taken, name) => {
    expect(freeName(wished, taken)).toBe(name);
  });
});

describe("times and sizes in words", () => {
  const now = new Date(2026, 10, 26, 15, 0).getTime();

  it.each([
    [new Date(2026, 10, 26, 14, 2), "14:02"],
    [new Date(2026, 10, 25, 9, 5), "25 Nov, 09:05"],
    [new Date(2024, 1, 3, 9, 5), "3 Feb 2024"],
  ])("%s is %s", (time, words) => {
    expect(when(time.getTime(), now)).toBe(words);
  });

  it("are finer where two of a list would read the same", () => {
    const day = (...parts: [number, number, number, number, number, number?, number?]) => new Date(...parts).getTime();
    const times = [
      day(2026, 10, 26, 14, 3, 5),
      day(2026, 10, 26, 14, 2, 40, 700),
      day(2026, 10, 26, 14, 2, 40, 300),
      day(2026, 10, 26, 14, 2, 7),
      day(2026, 10, 25, 14, 2, 7),
      day(2026, 10, 25, 14, 2, 9),
      day(2024, 1, 3, 9, 5),
      day(2024, 1, 3, 8, 5),
      day(2023, 1, 3, 8, 5),
    ];
    expect(whenApart(times, now)).toEqual([
      "14:03",
      "14:02:40.7",
      "14:02:40.3",
      "14:02:07",
      "25 Nov, 14:02:07",
      "25 Nov, 14:02:09",
      "3 Feb 2024, 09:05",
      "3 Feb 2024, 08:05",
      "3 Feb 2023",
    ]);
  });

  it.each([
    [0, "0 KB"],
    [1, "1 KB"],
    [123_456, "124 KB"],
    [1_450_000, "1.4 MB"],
  ])("%d bytes are %s", (bytes, words) => {
    expect(sizeOf(bytes)).toBe(words);
  });
});
