import { type Run, take, timesIn } from "./filling";

/**
 * Pots of groups as pots of their members: each group's candles are its members', one member after the other.
 * @param groups for each place in a filling, the places of its members
 * @param counts candles of each member
 */
export function dealOut(
  runs: readonly Run[],
  groups: readonly (readonly number[])[],
  counts: readonly number[],
): Run[] {
  const left = [...counts];
  const dealt: Run[] = [];
  for (const { filling, times } of runs) {
    for (let todo = times; todo > 0; ) {
      const own = counts.map(() => 0);
      for (const [g, n] of filling.entries()) {
        let need = n;
        for (const i of groups[g] ?? []) {
          own[i] = Math.min(need, left[i] as number);
          need -= own[i] as number;
        }
      }
      const run = { filling: own, times: Math.min(todo, timesIn(own, left)) };
      take(left, run);
      dealt.push(run);
      todo -= run.times;
    }
  }
  return dealt;
}
