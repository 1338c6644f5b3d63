const DAY = 86_400_000; // ms
const ZERO = Date.UTC(1899, 11, 30); // serial 0, as serials count from 1 March 1900 on

/** A day of a spreadsheet as ISO 8601 writes it: 46352 is `2026-11-26`. */
export const isoOfDay = (serial: number): string =>
  new Date(ZERO + Math.floor(serial) * DAY).toISOString().slice(0, 10);

/** The day that a text writes the way of ISO 8601, `2026-11-26`; undefined for any other text. */
export function dayOfIso(text: string): number | undefined {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return undefined;
  const serial = (Date.parse(`${text}T00:00:00Z`) - ZERO) / DAY;
  // A 30 February is no day in March.
  return Number.isFinite(serial) && isoOfDay(serial) === text ? serial : undefined;
}
