const DAY = 86_400_000; // ms
const SERIAL_OF_1970 = 25_569;

/** A day by its spreadsheet serial, the way of ISO 8601: `2026-11-26`. */
export const dayText = (serial: number): string =>
  new Date((Math.floor(serial) - SERIAL_OF_1970) * DAY).toISOString().slice(0, 10);
