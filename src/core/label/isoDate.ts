import { calendarDay } from "./calendarDay";

/**
 * A spreadsheet date as ISO 8601 writes it: `2026-11-26`.
 * @param serial see calendarDay
 */
export function isoDate(serial: number): string {
  const { year, month, day } = calendarDay(serial);
  return [year, String(month).padStart(2, "0"), String(day).padStart(2, "0")].join("-");
}
