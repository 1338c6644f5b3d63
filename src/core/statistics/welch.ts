import { deviation } from "./deviation";
import { incompleteBeta } from "./incompleteBeta";

/**
 * How likely two samples would lie at least so far apart, were their means the same: Welch's two-sided p, which takes
 * no common spread for granted. Where neither sample spreads at all, 1 for the same mean and 0 for another.
 * Source: Welch's t with the degrees of freedom of Welch and Satterthwaite.
 * @param first two values or more
 * @param second two values or more
 */
export function welch(first: readonly number[], second: readonly number[]): number {
  const [a, b] = [deviation(first), deviation(second)];
  const [u, v] = [a.deviation ** 2 / first.length, b.deviation ** 2 / second.length];
  if (u + v === 0) return a.mean === b.mean ? 1 : 0;
  const t2 = (a.mean - b.mean) ** 2 / (u + v);
  const degrees = (u + v) ** 2 / (u ** 2 / (first.length - 1) + v ** 2 / (second.length - 1));
  return incompleteBeta(degrees / (degrees + t2), degrees / 2, 0.5);
}
