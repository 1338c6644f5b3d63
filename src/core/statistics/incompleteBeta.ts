import { logGamma } from "./logGamma";

const SMALLEST = 1e-300;
const CLOSE = 1e-16;

/**
 * The regularised incomplete beta function: the share of the beta distribution below x.
 * Source: the continued fraction of Abramowitz & Stegun 26.5.8, worked out from the front by Lentz's way.
 * @param x 0 to 1
 * @param a above 0
 * @param b above 0
 */
export function incompleteBeta(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  const front = Math.exp(logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log1p(-x));
  // The fraction closes fast on one side of the mean; the other side is what is left of 1.
  return x < (a + 1) / (a + b + 2) ? (front * fraction(x, a, b)) / a : 1 - (front * fraction(1 - x, b, a)) / b;
}

function fraction(x: number, a: number, b: number): number {
  const awayFromZero = (value: number) => (Math.abs(value) < SMALLEST ? SMALLEST : value);
  let top = 1;
  let below = 1 / awayFromZero(1 - ((a + b) * x) / (a + 1));
  let value = below;
  // It closes within about the root of the larger one of a and b.
  for (let m = 1; m <= 10_000; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    let step = 1;
    for (const term of [even, odd]) {
      below = 1 / awayFromZero(1 + term * below);
      top = awayFromZero(1 + term / top);
      step = below * top;
      value *= step;
    }
    if (Math.abs(step - 1) < CLOSE) break;
  }
  return value;
}
