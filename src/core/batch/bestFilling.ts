import type { Filling } from "./filling";

/**
 * The filling of most value that fits the room, and a value that none can pass. Only a filling worth more than the
 * bar is of use: fillings are tried until `patience` runs out or, where one was found, a little longer to better it.
 * Source: the bounded knapsack problem by depth-first branch and bound, in order of value for size
 * (Martello & Toth 1990, Knapsack Problems, chapters 2 and 3).
 * @param values of one candle of each kind, 0 or more
 */
export function bestFilling(
  sizes: readonly number[],
  counts: readonly number[],
  room: number,
  values: readonly number[],
  bar: number,
  patience: number,
): { readonly filling: Filling; readonly value: number; readonly most: number; readonly tried: number } {
  const rate = (i: number): number => (values[i] as number) / (sizes[i] as number);
  const order = [...sizes.keys()].filter((i) => (counts[i] as number) > 0 && (values[i] as number) > 0);
  order.sort((a, b) => rate(b) - rate(a) || a - b);
  const rates = [...order.map(rate), 0];
  // Beyond this lies only the noise of binary fractions.
  const top = room * (rates[0] as number) * (1 - 1e-9);
  const pick = sizes.map(() => 0);
  let filling: Filling = [...pick];
  let [value, above, most, tried, limit] = [0, bar, 0, 0, patience];

  const isHopeless = (reach: number): boolean => {
    if (reach > above && tried++ < limit) return false;
    most = Math.max(most, reach);
    return true;
  };
  const go = (from: number, left: number, worth: number): void => {
    if (worth > value) {
      value = worth;
      filling = [...pick];
      if (value > bar) [above, limit] = [value, value >= top ? 0 : Math.min(patience, 5000)];
    }
    for (let k = from; ; k++) {
      while (k < order.length && (sizes[order[k] as number] as number) > left) k++;
      if (isHopeless(worth + left * (rates[k] as number))) return;
      const i = order[k] as number;
      const size = sizes[i] as number;
      for (let n = Math.min(counts[i] as number, Math.floor(left / size)); n > 0; n--) {
        const [rest, sum] = [left - n * size, worth + n * (values[i] as number)];
        if (isHopeless(sum + rest * (rates[k + 1] as number))) break;
        pick[i] = n;
        go(k + 1, rest, sum);
      }
      pick[i] = 0;
    }
  };
  go(0, room, 0);
  return { filling, value, most: Math.max(most, value), tried };
}
