import { sum } from "./sum";
import type { Point } from "./throughOrigin";

/**
 * Least squares line with an intercept. The means are taken off before anything is multiplied, so that a small
 * change of large numbers (date-times, say) keeps its digits.
 * Source: the normal equations; checked against NIST StRD Norris.
 * @param points two or more, not all with the same x
 */
export function straightLine(points: readonly Point[]): { slope: number; intercept: number } {
  const x = sum(points.map((point) => point.x)) / points.length;
  const y = sum(points.map((point) => point.y)) / points.length;
  const squares = sum(points.map((point) => (point.x - x) ** 2));
  const slope = sum(points.map((point) => (point.x - x) * (point.y - y))) / squares;
  return { slope, intercept: y - slope * x };
}
