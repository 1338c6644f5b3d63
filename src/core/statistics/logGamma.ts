/** Of the series: Bernoulli numbers over 2k (2k - 1). */
const TERMS = [1 / 12, -1 / 360, 1 / 1260, -1 / 1680, 1 / 1188];

/** From here on the terms give all digits. */
const LARGE = 20;

/**
 * Natural logarithm of the gamma function.
 * Source: Stirling's series (Abramowitz & Stegun 6.1.40); a smaller x is first brought up by gamma(x + 1) = x gamma(x).
 * @param x above 0
 */
export function logGamma(x: number): number {
  let product = 1;
  let large = x;
  for (; large < LARGE; large++) product *= large;
  const series = TERMS.reduce((total, term, k) => total + term / large ** (2 * k + 1), 0);
  return (large - 0.5) * Math.log(large) - large + 0.5 * Math.log(2 * Math.PI) + series - Math.log(product);
}
