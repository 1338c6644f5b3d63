/** Days between the first days of the two ways to count them. */
export const DAYS_TO_1904 = 1462;

/** What shows no part of a date: quoted texts, escaped letters, colours, conditions, fillers. */
const NOT_SHOWN = /"[^"]*"|\\.|_.|\*.|\[(?!(?:h+|m+|s+)\])[^\]]*\]/gi;

/** Whether a number in this format counts days, so that its meaning depends on the first day. */
export function isDayFormat(format: string, value: number): boolean {
  const shown = format.replace(NOT_SHOWN, "");
  if (/general/i.test(shown)) return false;
  if (/[dy]/i.test(shown)) return true;
  // A length of time, or a time of no day.
  if (/\[(?:h+|m+|s+)\]/i.test(shown) || Math.abs(value) < 1)
    return /m/i.test(shown) && !/[hs]/i.test(shown) && !/\[/.test(shown);
  return /[hms]/i.test(shown);
}
