import { dot, type Filling, ROOM } from "./filling";
import type { Steps } from "./steps";

/** Fillings looked at for one pot, and pots one inside the other; beyond these a search proves nothing. */
const WIDTH = 200;
const DEPTH = 500;

/**
 * Looks for a way to pour all candles into so many pots: the fillings, or none and whether that is proven.
 * Pots are filled one after the other, each with one of the largest candles left (bin completion, Korf 2002).
 * Left out are fillings that waste more room or worth than all pots together may, those with room for one more
 * candle or for a larger one in the place of another (dominance, Martello & Toth 1990), and what was left before
 * without success.
 * @param worth of a candle of each kind such that no filling is worth more than 1 (see fractionalPots)
 */
export function searchPots(
  sizes: readonly number[],
  counts: readonly number[],
  pots: number,
  worth: readonly number[],
  steps: Steps,
): { readonly fillings?: readonly Filling[]; readonly impossible: boolean } {
  const m = sizes.length;
  const left = [...counts];
  const fillings: Filling[] = [];
  const failed = new Map<string, number>();
  // The most worth for its size among a kind and the smaller ones.
  const rates = sizes.map(() => 0);
  for (let k = m - 1; k >= 0; k--) rates[k] = Math.max(rates[k + 1] ?? 0, (worth[k] as number) / (sizes[k] as number));
  let goesOn = pots <= DEPTH;
  let isWhole = goesOn;

  const isDominated = (pick: Filling, room: number): boolean => {
    let larger = Infinity;
    for (let i = 0; i < m; i++) {
      if ((pick[i] as number) > 0 && larger - (sizes[i] as number) <= room) return true;
      if ((left[i] as number) > (pick[i] as number)) larger = sizes[i] as number;
    }
    return larger <= room;
  };

  const candidates = (spareRoom: number, spareWorth: number): Filling[] => {
    const found: { filling: Filling; room: number; value: number }[] = [];
    const pick = sizes.map(() => 0);
    const first = left.findIndex((n) => n > 0);
    const go = (from: number, room: number, value: number): void => {
      goesOn &&= steps.spend(8);
      if (!goesOn || found.length >= WIDTH) {
        isWhole = false;
        return;
      }
      let k = from;
      while (k < m && ((left[k] as number) === 0 || (sizes[k] as number) > room)) k++;
      if (1 - value - room * (rates[k] ?? 0) > spareWorth) return;
      if (k === m) {
        if (room <= spareRoom && !isDominated(pick, room)) found.push({ filling: [...pick], room, value });
        return;
      }
      const size = sizes[k] as number;
      const least = k === first ? 1 : 0;
      for (let n = Math.min(left[k] as number, Math.floor(room / size)); n >= least; n--) {
        pick[k] = n;
        go(k + 1, room - n * size, value + n * (worth[k] as number));
      }
      pick[k] = 0;
    };
    go(first, ROOM, 0);
    return found.sort((a, b) => b.value - a.value || a.room - b.room).map(({ filling }) => filling);
  };

  const pour = (filling: Filling, times: number): void => {
    for (let i = 0; i < m; i++) left[i] = (left[i] as number) - times * (filling[i] as number);
  };
  const go = (potsLeft: number): boolean => {
    if (left.every((n) => n === 0)) return true;
    const spareRoom = potsLeft - dot(sizes, left) + 1e-9;
    const spareWorth = potsLeft - dot(worth, left) + 1e-9;
    if (spareRoom < 0 || spareWorth < 0 || !goesOn) return false;
    const key = left.join();
    if ((failed.get(key) ?? -1) >= potsLeft) return false;
    steps.spend(m);
    for (const filling of candidates(spareRoom, spareWorth)) {
      pour(filling, 1);
      fillings.push(filling);
      if (go(potsLeft - 1)) return true;
      fillings.pop();
      pour(filling, -1);
    }
    failed.set(key, potsLeft);
    return false;
  };
  return go(pots) ? { fillings, impossible: false } : { impossible: isWhole };
}
