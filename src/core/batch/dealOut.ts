import { type SamePots, take, timesIn } from "./filling";

/**
 * Pots of groups as pots of their members: each group's candles are its members', one member after the other.
 * @param groups for each place in a filling, the places of its members
 * @param counts candles of each member
 */
export function dealOut(
  filled: readonly SamePots[],
  groups: readonly (readonly number[])[],
  counts: readonly number[],
): SamePots[] {
  const left = [...counts];
  const dealt: SamePots[] = [];
  for (const { filling, times } of filled) {
    for (let todo = times; todo > 0; ) {
      const own = counts.map(() => 0);
      for (const [g, n] of filling.entries()) {
        let need = n;
        for (const i of groups[g] ?? []) {
          own[i] = Math.min(need, left[i] as number);
          need -= own[i] as number;
        }
      }
      const same = { filling: own, times: Math.min(todo, timesIn(own, left)) };
      take(left, same);
      dealt.push(same);
      todo -= same.times;
    }
  }
  return dealt;
}
