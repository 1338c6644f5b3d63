import { ROOM } from "./filling";
import type { Steps } from "./steps";

/** A pot that is nearly full: the places of its kinds, how many of each, and the share of the pot left empty. */
export interface TightFilling {
  readonly kinds: readonly number[];
  readonly numbers: readonly number[];
  readonly waste: number;
}

/** More would take longer to choose from than there is time. */
const MOST_FILLINGS = 5000;

/**
 * All fillings that leave at most `spare` of a pot empty; undefined where there are too many, or the steps are gone.
 * @param sizes shares of a pot, the largest first
 */
export function tightFillings(
  sizes: readonly number[],
  counts: readonly number[],
  spare: number,
  steps: Steps,
): TightFilling[] | undefined {
  const found: TightFilling[] = [];
  const smallest = sizes.at(-1) ?? 1;
  const kinds: number[] = [];
  const numbers: number[] = [];

  /** Whether all fillings were listed that go on with the kinds from this one on. */
  const go = (from: number, room: number): boolean => {
    if (room <= spare) {
      if (found.length === MOST_FILLINGS) return false;
      found.push({ kinds: [...kinds], numbers: [...numbers], waste: room });
    }
    if (!steps.spend((sizes.length - from) / 8 + 1)) return false;
    for (let k = from; k < sizes.length; k++) {
      const size = sizes[k] as number;
      if (size > room) continue;
      const depth = kinds.length;
      for (let n = Math.min(counts[k] as number, Math.floor(room / size)); n > 0; n--) {
        const rest = room - n * size;
        if (rest > spare && rest < smallest) continue;
        kinds[depth] = k;
        numbers[depth] = n;
        const isWhole = go(k + 1, rest);
        kinds.length = depth;
        numbers.length = depth;
        if (!isWhole) return false;
      }
    }
    return true;
  };
  return go(0, ROOM) ? found : undefined;
}
