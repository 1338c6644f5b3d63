import { plain } from "../check/plain";
import { wholeNumber } from "../check/wholeNumber";
import { wrong } from "../check/wrong";
import { calendarDay } from "./calendarDay";

/**
 * Lot code of a run: ISO 8601 ordinal date (year and day of the year) and the run of that day, `2026-330-02`.
 * Source: ISO 8601 for the date; the run number behind it is common practice.
 * @param date spreadsheet serial, see calendarDay
 * @param run whole number, 1 to 99
 * @param prefix at most 20 characters, put in front with a hyphen
 */
export function lotCode(date: number, run: number, prefix = ""): string {
  const { year, ordinal } = calendarDay(date);
  const number = wholeNumber(run);
  if (!(number >= 1 && number <= 99)) {
    throw wrong("run", `${plain(run)} is not a run of a day; write a whole number from 1 to 99`);
  }
  const front = prefix.trim();
  if (front.length > 20) throw wrong("prefix", `${front.length} characters are too long for a label; write at most 20`);
  const code = `${year}-${String(ordinal).padStart(3, "0")}-${String(number).padStart(2, "0")}`;
  return front === "" ? code : `${front}-${code}`;
}
