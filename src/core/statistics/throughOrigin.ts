import { sum } from "./sum";

export interface Point {
  readonly x: number;
  readonly y: number;
}

/**
 * Least squares line through the origin.
 * Source: the normal equation; checked against NIST StRD NoInt1 and NoInt2.
 * @param points one or more, not all with x = 0
 * @returns slope, and its standard error (NaN under two points)
 */
export function throughOrigin(points: readonly Point[]): { slope: number; error: number } {
  const squares = sum(points.map(({ x }) => x * x));
  const slope = sum(points.map(({ x, y }) => x * y)) / squares;
  const residual = sum(points.map(({ x, y }) => (y - slope * x) ** 2));
  return { slope, error: Math.sqrt(residual / (points.length - 1) / squares) };
}
