import { largest } from "../longLists";
import { fillInTurn } from "./fillInTurn";
import { type Filling, potsIn, type SamePots, take, timesIn } from "./filling";
import { type Fractional, fractionalPots } from "./fractionalPots";
import { greedyFilling } from "./greedyFilling";
import { searchPots } from "./searchPots";
import type { Steps } from "./steps";

/**
 * Whole pots from fractional ones. Pours the whole part of each filling, or one pot of the most used one where
 * there is no whole part, and treats what is left as a smaller task of the same sort, until simple filling or a
 * short search meets the goal or the goal is out of reach. Source: residual rounding, Wäscher & Gau 1996.
 * @param fractional pots for these very candles
 */
export function roundPots(
  sizes: readonly number[],
  counts: readonly number[],
  { fillings, times }: Fractional,
  goal: number,
  steps: Steps,
): SamePots[] {
  const left = [...counts];
  const poured: SamePots[] = [];
  const pour = (filling: Filling, pots: number): void => {
    const same = { filling, times: Math.min(pots, timesIn(filling, left)) };
    if (same.times === 0) return;
    take(left, same);
    poured.push(same);
  };
  for (const [i, filling] of fillings.entries()) pour(filling, Math.floor((times[i] as number) + 1e-9));
  if (poured.length === 0) pour(fillings[times.indexOf(largest(times))] as Filling, 1);

  const kept = [...left.keys()].filter((i) => (left[i] as number) > 0);
  const size = kept.map((i) => sizes[i] as number);
  const count = kept.map((i) => left[i] as number);
  const finish = (rest: readonly SamePots[]): SamePots[] => [
    ...poured,
    ...rest.map(({ filling, times }) => {
      const all = counts.map(() => 0);
      for (const [k, i] of kept.entries()) all[i] = filling[k] as number;
      return { filling: all, times };
    }),
  ];
  const rest = goal - potsIn(poured);
  const simple = fillInTurn(count, (some) => greedyFilling(size, some));
  if (potsIn(simple) <= rest) return finish(simple);
  const fractional = fractionalPots(size, count, Math.max(1, rest), simple, steps);
  if (fractional.pots > rest || !steps.spend(0)) return finish(simple);
  const found = searchPots(size, count, rest, fractional.worth, steps.share(0.01));
  if (found.fillings) return finish(found.fillings.map((filling) => ({ filling, times: 1 })));
  if (found.impossible) return finish(simple);
  const rounded = roundPots(size, count, fractional, rest, steps);
  return finish(potsIn(rounded) < potsIn(simple) ? rounded : simple);
}
