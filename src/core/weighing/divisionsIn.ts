/**
 * How many scale divisions a weight is, not rounded to whole ones. Taken to 15 digits, so that
 * 1.15 / 0.1 is 11.5, as the decimals say, and not the 11.499999999999998 of binary fractions.
 */
export function divisionsIn(weight: number, division: number): number {
  return Number((weight / division).toPrecision(15));
}
