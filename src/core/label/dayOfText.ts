const DAY = 86_400_000; // ms
const ZERO = Date.UTC(1899, 11, 30); // serial 0, as serials count from 1 March 1900 on

/** The serial of a day that is written as text the way of ISO 8601, `2026-11-26`; undefined for any other text. */
export function dayOfText(text: string): number | undefined {
  const [, year, month, day] = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text.trim()) ?? [];
  if (year === undefined) return undefined;
  const time = new Date(Date.UTC(Number(year), Number(month) - 1, Number(day)));
  // A 30 February is no day in March.
  return time.getUTCMonth() === Number(month) - 1 && time.getUTCDate() === Number(day)
    ? (time.getTime() - ZERO) / DAY
    : undefined;
}
