/** Day 0 of those that count. Before March 1900 days are one less: the format has a 29 February there. */
const FIRST = Date.UTC(1899, 11, 30);
const DAY = 86_400_000;
const ISO = /^(?:(\d{4})-(\d\d)-(\d\d))?T?(?:(\d\d):(\d\d)(?::(\d\d(?:\.\d+)?))?)?Z?$/;

/** The number that a spreadsheet counts for `2026-11-26`, `2026-11-26T14:30:00` or `14:30:00`; undefined for others. */
export function dayNumber(text: string): number | undefined {
  const [whole, year, month, day, hours = "0", minutes = "0", seconds = "0"] = ISO.exec(text) ?? [];
  if (!whole) return undefined;
  const time = (Number(hours) * 3600 + Number(minutes) * 60 + Number(seconds)) / 86_400;
  if (year === undefined) return time;
  const days = (Date.UTC(Number(year), Number(month) - 1, Number(day)) - FIRST) / DAY;
  return (days < 61 ? days - 1 : days) + time;
}
