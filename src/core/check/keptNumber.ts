import { plain } from "./plain";
import { wrong } from "./wrong";

/** A spreadsheet keeps 15 digits: beyond them a number is a slip, and its products would run out of range. */
const LARGEST = 1e15;

/** Whether a spreadsheet keeps a number to its last digit. */
export const isKept = (value: number): boolean => Math.abs(value) <= LARGEST;

/** A number that a spreadsheet keeps to its last digit. */
export function keptNumber(name: string, value: number): number {
  if (isKept(value)) return value;
  throw wrong(name, `${plain(value)} is too large; check its digits`);
}
