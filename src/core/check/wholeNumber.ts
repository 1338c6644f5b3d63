/**
 * The whole number that a value is, or NaN where it is none. What binary fractions add does not count:
 * 100 x 1.1, which a spreadsheet shows as 110, is 110.
 */
export function wholeNumber(value: number): number {
  const whole = Math.round(value);
  return Math.abs(value - whole) <= 1e-12 * Math.max(1, Math.abs(whole)) ? whole : Number.NaN;
}
