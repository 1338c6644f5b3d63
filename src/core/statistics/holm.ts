/**
 * Each p made so much larger that all of them may be looked at together: Holm's step-down adjustment, in the order given.
 * Source: Holm 1979.
 * @param ps 0 to 1 each
 */
export function holm(ps: readonly number[]): number[] {
  const adjusted = ps.map(() => 1);
  let least = 0;
  const order = ps.map((p, at) => ({ p, at })).sort((a, b) => a.p - b.p);
  for (const [i, { p, at }] of order.entries()) {
    least = Math.max(least, Math.min(1, (ps.length - i) * p));
    adjusted[at] = least;
  }
  return adjusted;
}
