import { ROOM } from "./filling";

/** Candles of one size: the share of a pot that one takes, how many there are, and the weights they stand for. */
export interface SizeKind {
  readonly size: number;
  readonly count: number;
  /** Places in the list of weights. */
  readonly from: readonly number[];
}

/**
 * Candles by size, the largest first, where 1 is the most that a pot can really hold. Sizes are taken to 14 digits,
 * so that what is equal in decimals is one kind. Where all are whole multiples of one unit, the rest of the pot
 * that no sum of them can fill is left out: candles of 50 and 70 fill at most 90 of a pot of 99.
 */
export function sizeKinds(weights: readonly number[], counts: readonly number[], capacity: number): SizeKind[] {
  const bySize = new Map<number, number[]>();
  for (const [i, weight] of weights.entries()) {
    const size = Math.min(1, Number((weight / capacity).toPrecision(14)));
    if ((counts[i] as number) > 0) bySize.set(size, [...(bySize.get(size) ?? []), i]);
  }
  const sizes = [...bySize.keys()].sort((a, b) => b - a);
  const unit = commonUnit(sizes);
  return sizes.map((size) => {
    const from = bySize.get(size) ?? [];
    return {
      size: unit > 0 ? Math.round(size / unit) / Math.floor(ROOM / unit) : size,
      count: from.reduce((total, i) => total + (counts[i] as number), 0),
      from,
    };
  });
}

/** The largest unit that all sizes are whole multiples of (Euclid's algorithm), or 0 where it is below 1e-6. */
function commonUnit(sizes: readonly number[]): number {
  let unit = 0;
  for (const size of sizes) {
    let [a, b] = [size, unit];
    while (b > 1e-7) [a, b] = [b, Math.abs(a - Math.round(a / b) * b)];
    unit = a;
  }
  const largest = sizes[0] ?? 0;
  unit = largest / Math.round(largest / unit);
  const isMultiple = (size: number): boolean => Math.abs(Math.round(size / unit) * unit - size) <= 1e-13 * size;
  return unit > 1e-6 && sizes.every(isMultiple) ? unit : 0;
}
