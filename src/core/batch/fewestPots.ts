import { dealOut } from "./dealOut";
import { fillInTurn } from "./fillInTurn";
import { dot, type Filling, potsIn, type SamePots } from "./filling";
import { type Fractional, fractionalPots } from "./fractionalPots";
import { fullestFilling } from "./fullestFilling";
import { gatherRoom } from "./gatherRoom";
import { greedyFilling } from "./greedyFilling";
import { roundPots } from "./roundPots";
import { searchPots } from "./searchPots";
import { Steps } from "./steps";
import { tightPots } from "./tightPots";

/** With more kinds than this, kinds of nearly the same size are taken together. */
const MANY = 200;
/** With more kinds times different pots than this the simplest way has to do: the lists alone would take a second. */
const MOST_PLACES = 1_500_000;

/**
 * Fewest pots for candles of different sizes, and a number of pots that no way can beat. From below come the sum of
 * the sizes and fractional pots; from above simple fillings, the room they leave gathered, nearly full pots where
 * hardly anything may be wasted, rounded fractional pots and at last a search. The searches raise the bound where they prove that there is no way.
 * All ends when the two meet or the steps are gone.
 * @param sizes shares of a pot, the largest first
 */
export function fewestPots(
  sizes: readonly number[],
  counts: readonly number[],
  steps: Steps,
): { readonly filled: readonly SamePots[]; readonly bound: number } {
  // The little less outweighs what ROOM forgives.
  let bound = Math.ceil(dot(sizes, counts) * (1 - 2e-12));
  const simplest = (size: readonly number[], count: readonly number[]): SamePots[] =>
    fillInTurn(count, (left) => greedyFilling(size, left));
  let filled = simplest(sizes, counts);
  const isEnough = (others: SamePots[] = filled): boolean => {
    if (potsIn(others) < potsIn(filled)) filled = others;
    return potsIn(filled) <= bound;
  };
  if (isEnough() || sizes.length * filled.length > MOST_PLACES) return { filled, bound };
  const fullest = fillInTurn(counts, (left) => fullestFilling(sizes, left, steps));
  const known = [...filled, ...fullest];
  if (isEnough(fullest)) return { filled, bound };
  let gathered: SamePots[] | undefined;
  const isGatheredEnough = (): boolean => {
    gathered ??= gatherRoom(sizes, fullest, bound, steps.share(0.3));
    return isEnough(gathered);
  };

  if (sizes.length > MANY) {
    if (isGatheredEnough()) return { filled, bound };
    const width = Math.ceil(sizes.length / 100);
    const groups = Array.from({ length: Math.ceil(sizes.length / width) }, (_, g) =>
      [...sizes.keys()].slice(g * width, (g + 1) * width),
    );
    const count = groups.map((group) => group.reduce((total, i) => total + (counts[i] as number), 0));
    // Each candle as the smallest of its group can only lower the bound; as the largest it certainly fits.
    const [smallest, largest] = [-1, 0].map((at) => groups.map((group) => sizes[group.at(at) as number] as number));
    const relax = (size: readonly number[]): Fractional =>
      fractionalPots(size, count, bound, simplest(size, count), steps.share(0.3));
    bound = relax(smallest as number[]).pots;
    const rounded = roundPots(largest as number[], count, relax(largest as number[]), bound, steps.share(0.3));
    isEnough(dealOut(rounded, groups, counts));
    return { filled, bound };
  }

  let fractional = fractionalPots(sizes, counts, bound, known, new Steps(0));
  const isRoundedEnough = (some: Steps): boolean => {
    bound = fractional.pots;
    return isEnough() || isEnough(roundPots(sizes, counts, fractional, bound, some));
  };
  const isTightEnough = (some: Steps): boolean => {
    const { fillings, impossible } = tightPots(sizes, counts, bound, some);
    if (impossible) bound++;
    return isEnough(fillings && once(fillings));
  };
  // Where a goal is out of reach fractional pots mostly say so soon; where nothing may be wasted they take long.
  for (const part of [0.02, 0.2]) {
    fractional = fractionalPots(sizes, counts, bound, known, steps.share(part));
    if (isRoundedEnough(steps.share(part)) || isGatheredEnough()) return { filled, bound };
    if (isTightEnough(steps.share(4 * part))) return { filled, bound };
  }
  fractional = fractionalPots(sizes, counts, bound, known, steps.share(0.8), true);
  while (!isRoundedEnough(steps)) {
    const { fillings, impossible } = searchPots(sizes, counts, bound, fractional.worth, steps);
    if (fillings) filled = once(fillings);
    else if (impossible) fractional = { ...fractional, pots: bound + 1 };
    else break;
  }
  return { filled, bound };
}

const once = (fillings: readonly Filling[]): SamePots[] => fillings.map((filling) => ({ filling, times: 1 }));
