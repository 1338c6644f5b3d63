/** Today where the maker is, as a date field writes it: 2026-11-26. */
export function today(): string {
  const now = new Date();
  const two = (number: number) => String(number).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

const SERIAL_OF_1970 = 25_569;
const DAY = 86_400_000; // ms

/** 1 March 1900: spreadsheet programs disagree on the days before. */
const FIRST = 61;

/** The spreadsheet serial of a date field's day; undefined when the field is empty or the day too early. */
export function serialOf(date: string): number | undefined {
  const time = Date.parse(`${date}T00:00:00Z`);
  const serial = time / DAY + SERIAL_OF_1970;
  return serial >= FIRST ? serial : undefined;
}
