/** Decimals of a division that are looked for: a scale shows no more. */
const MOST_DECIMALS = 6;

/** What so many of a scale's divisions weigh, without the noise of binary fractions: three of 0.1 are 0.3. */
export function inDivisions(division: number): (count: number) => number {
  for (let decimals = 0; decimals <= MOST_DECIMALS; decimals++) {
    const one = 10 ** decimals;
    const whole = Math.round(division * one);
    // Whole numbers divided once are rounded once.
    if (whole / one === division) return (count) => (count * whole) / one;
  }
  return (count) => Number((count * division).toPrecision(15));
}
