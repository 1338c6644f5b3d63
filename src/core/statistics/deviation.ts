import { sum } from "./sum";

/**
 * Mean and standard deviation of a sample (n - 1); the deviation of one value is 0.
 * Source: checked against NIST StRD NumAcc1.
 * @param values one or more
 */
export function deviation(values: readonly number[]): { mean: number; deviation: number } {
  const mean = sum(values) / values.length;
  const squares = sum(values.map((value) => (value - mean) ** 2));
  return { mean, deviation: Math.sqrt(squares / Math.max(1, values.length - 1)) };
}
