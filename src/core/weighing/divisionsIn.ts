/** Digits of a quotient that count: binary fractions make noise behind them. */
const DIGITS = 12;

/**
 * How often one number goes into another, not rounded to whole times but rid of noise: taken to 12 digits, 1.15 / 0.1
 * is 11.5, as the decimals say, and not the 11.499999999999998 of binary fractions. Beyond 12 digits it stays as it is.
 */
export function divisionsIn(weight: number, division: number): number {
  const quotient = weight / division;
  return Math.abs(quotient) < 10 ** (DIGITS - 1) ? Number(quotient.toPrecision(DIGITS)) : quotient;
}
