/** What one pot holds: how many candles of each kind. */
export type Filling = readonly number[];

/** Pots that all hold the same. */
export interface SamePots {
  readonly filling: Filling;
  readonly times: number;
}

/**
 * What fits a pot when the pot is 1. The excess forgives what binary fractions add to decimals: three candles of
 * 0.1 fit a pot of 0.3. With the rounding of sizes (see sizeKinds) it stays below 1e-12.
 */
export const ROOM = 1 + 8e-13;

export const potsIn = (filled: readonly SamePots[]): number => filled.reduce((total, { times }) => total + times, 0);

/** How many pots of a filling the candles left allow. */
export const timesIn = (filling: Filling, left: readonly number[]): number =>
  filling.reduce((least, n, i) => (n > 0 ? Math.min(least, Math.floor((left[i] as number) / n)) : least), Infinity);

/** Takes the candles of pots from what is left. */
export function take(left: number[], { filling, times }: SamePots): void {
  for (const [i, n] of filling.entries()) left[i] = (left[i] as number) - n * times;
}

/** Sum of products, as far as the second list goes. */
export function dot(a: readonly number[], b: readonly number[]): number {
  let total = 0;
  for (let i = 0; i < b.length; i++) total += (a[i] as number) * (b[i] as number);
  return total;
}
