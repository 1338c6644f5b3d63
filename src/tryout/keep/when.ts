/** Times and sizes as a maker reads them. */

const clock = (seconds: Intl.DateTimeFormatOptions = {}) =>
  new Intl.DateTimeFormat("en-GB", { hour: "2-digit", minute: "2-digit", ...seconds });

const CLOCK = clock();
/** Finer and finer: edits come together that are less than a second apart. */
const CLOCKS = [CLOCK, clock({ second: "2-digit" }), clock({ second: "2-digit", fractionalSecondDigits: 1 })];
const DAY = new Intl.DateTimeFormat("en-GB", { day: "numeric", month: "short" });
const YEAR = new Intl.DateTimeFormat("en-GB", { day: "numeric", month: "short", year: "numeric" });

/** `14:02`, `23 Nov, 14:02`, `23 Nov 2024`. */
export function when(time: number, now = Date.now()): string {
  return isYearOf(time, now) ? at(time, now, CLOCK) : YEAR.format(time);
}

/** The same for each time of a list; where two would read the same, as fine as tells them apart: `14:02:37`. */
export function whenApart(times: readonly number[], now = Date.now()): string[] {
  const ways = [(time: number) => when(time, now), ...CLOCKS.map((finer) => (time: number) => at(time, now, finer))];
  return times.map((time, i) => {
    const others = times.filter((_, other) => other !== i);
    const way = ways.find((words) => !others.some((other) => words(other) === words(time))) ?? ways.at(-1);
    return way?.(time) ?? "";
  });
}

function at(time: number, now: number, clock: Intl.DateTimeFormat): string {
  if (new Date(time).toDateString() === new Date(now).toDateString()) return clock.format(time);
  return `${(isYearOf(time, now) ? DAY : YEAR).format(time)}, ${clock.format(time)}`;
}

const isYearOf = (time: number, now: number): boolean => new Date(time).getFullYear() === new Date(now).getFullYear();

/** `3 KB`, `1.4 MB`. */
export function sizeOf(bytes: number): string {
  const kilobytes = Math.ceil(bytes / 1000);
  return kilobytes < 1000 ? `${kilobytes} KB` : `${(bytes / 1_000_000).toFixed(1)} MB`;
}
