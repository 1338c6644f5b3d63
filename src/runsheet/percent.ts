import { plain } from "../core/check/plain";

/** A share as a percentage of so many digits. */
export const percent = (share: number, digits = 4): string => plain(Number((share * 100).toPrecision(digits)));

/** A share in percent of two digits that it is at most, so rounded up; or at least, rounded down. */
export const atMost = (share: number): string => twoDigits(share, Math.ceil);
export const atLeast = (share: number): string => twoDigits(share, Math.floor);

function twoDigits(share: number, round: (value: number) => number): string {
  // What a sum of binary fractions adds is no digit to round by.
  const exact = Number((share * 100).toPrecision(12));
  const step = exact < 10 ? 10 : 1;
  return plain(round(Number((exact * step).toPrecision(12))) / step);
}
