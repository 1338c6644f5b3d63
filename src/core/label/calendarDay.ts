import { plain } from "../check/plain";
import { wrong } from "../check/wrong";

/** A day of the calendar: `ordinal` counts the days of its year from 1. */
export interface CalendarDay {
  readonly year: number;
  readonly ordinal: number;
}

const DAY = 86_400_000; // ms
const ZERO = Date.UTC(1899, 11, 30); // serial 0, as serials count from 1 March 1900 on

/** Whether a serial is a day that all programs agree on. */
export const isDay = (serial: number): boolean => serial >= 61 && serial < 2_958_466;

/**
 * The day of a spreadsheet date. A time of day is dropped.
 * Serials below 61 are refused: Excel counts a 29 February 1900 that never was, so programs disagree on them.
 * @param serial days as a spreadsheet counts them (2026-11-26 is 46352), 61 to 2958465, the last day of 9999
 */
export function calendarDay(serial: number): CalendarDay {
  if (!isDay(serial)) {
    throw wrong(
      "date",
      `${plain(serial)} is no date from 1 March 1900 to the year 9999; write a date such as 2026-11-26`,
    );
  }
  const time = ZERO + Math.floor(serial) * DAY;
  const year = new Date(time).getUTCFullYear();
  const ordinal = (time - Date.UTC(year, 0, 1)) / DAY + 1;
  return { year, ordinal };
}
