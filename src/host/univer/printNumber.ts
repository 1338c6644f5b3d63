/** Numbers on a printed page: never broken into two lines, of which the first would be another number. */

import { isHidden, numberThatFits } from "./numberThatFits";

/** Points: a number that is too wide for its column shrinks to this. */
const SMALLEST = 6;

/** CSS pixels of a point. */
const POINT = 96 / 72;

/** Widths in Arial as shares of the size, from memory of its metrics; all else of a number is as wide as a digit. */
const WIDTHS: Readonly<Record<string, number>> = { ".": 0.278, ",": 0.278, " ": 0.278, "-": 0.333, "%": 0.889 };
const DIGIT = 0.556;

const widthOf = (text: string): number => [...text].reduce((sum, sign) => sum + (WIDTHS[sign] ?? DIGIT), 0);

/** A number and the size in points at which it fits into so many pixels. */
export function fittedNumber(
  text: string,
  isPlain: boolean,
  points: number,
  room: number,
): { readonly text: string; readonly points: number } {
  for (let size = points; ; size = Math.max(SMALLEST, size - 0.5)) {
    const fitted = numberThatFits(text, isPlain, room, (one) => widthOf(one) * size * POINT);
    if (!isHidden(fitted) || size <= SMALLEST) return { text: fitted, points: size };
  }
}
