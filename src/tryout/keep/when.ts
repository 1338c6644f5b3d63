/** Times and sizes as a maker reads them. */

const CLOCK = new Intl.DateTimeFormat("en-GB", { hour: "2-digit", minute: "2-digit" });
const DAY = new Intl.DateTimeFormat("en-GB", { day: "numeric", month: "short" });
const YEAR = new Intl.DateTimeFormat("en-GB", { day: "numeric", month: "short", year: "numeric" });

/** `14:02`, `23 Nov, 14:02`, `23 Nov 2024`. */
export function when(time: number, now = Date.now()): string {
  const [date, today] = [new Date(time), new Date(now)];
  if (date.toDateString() === today.toDateString()) return CLOCK.format(date);
  if (date.getFullYear() === today.getFullYear()) return `${DAY.format(date)}, ${CLOCK.format(date)}`;
  return YEAR.format(date);
}

/** `3 KB`, `1.4 MB`. */
export function sizeOf(bytes: number): string {
  const kilobytes = Math.ceil(bytes / 1000);
  return kilobytes < 1000 ? `${kilobytes} KB` : `${(bytes / 1_000_000).toFixed(1)} MB`;
}
