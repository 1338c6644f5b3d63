import { type Filling, type SamePots, take, timesIn } from "./filling";

/** Pots filled one after the other, each filling as often as the candles last. */
export function fillInTurn(counts: readonly number[], fill: (left: readonly number[]) => Filling): SamePots[] {
  const left = [...counts];
  const filled: SamePots[] = [];
  while (left.some((n) => n > 0)) {
    const filling = fill(left);
    const same = { filling, times: timesIn(filling, left) };
    take(left, same);
    filled.push(same);
  }
  return filled;
}
