import { type Filling, type Run, take, timesIn } from "./filling";

/** Pots filled one after the other, each filling as often as the candles last. */
export function fillInTurn(counts: readonly number[], fill: (left: readonly number[]) => Filling): Run[] {
  const left = [...counts];
  const runs: Run[] = [];
  while (left.some((n) => n > 0)) {
    const filling = fill(left);
    const run = { filling, times: timesIn(filling, left) };
    take(left, run);
    runs.push(run);
  }
  return runs;
}
