import { Cover } from "./cover";
import { draws } from "./draws";
import { dot, type Filling } from "./filling";
import type { Steps } from "./steps";
import { tightFillings } from "./tightFillings";

/** Pots poured before a search begins anew in another order: a bad beginning is hardly ever mended at the end. */
const PATIENCE = 250;
/** Pots one inside the other; with more nothing is looked for. */
const DEPTH = 500;
/** About so many pots of the deepest search are poured anew: so many candles can be put together in very many ways. */
const AGAIN = 30;

/**
 * Looks for a way to pour all candles into so many pots where hardly anything may be wasted: the fillings, or none and
 * whether that is proven. Lists the fillings that waste no more than all pots together may, and pours them one after
 * the other, always for the kind that the fewest of them are left for. Those that take what is hard to place come first,
 * by and large: draws, the same for the same candles, make each new start another one. Most starts keep what the
 * deepest search had poured, but for some pots.
 * Source: exact cover, fewest choices first (Knuth 2000, Dancing links), with restarts (Gomes, Selman & Kautz 1998) and
 * large neighbourhoods (Shaw 1998).
 * @param sizes shares of a pot, the largest first
 */
export function tightPots(
  sizes: readonly number[],
  counts: readonly number[],
  pots: number,
  steps: Steps,
): { readonly fillings?: readonly Filling[]; readonly impossible: boolean } {
  const spare = pots - dot(sizes, counts) + 1e-9;
  const listed = pots > DEPTH ? undefined : tightFillings(sizes, counts, spare, steps);
  if (!listed) return { impossible: false };
  const cover = new Cover(listed, counts);
  const draw = draws();
  const inOrder = (open: readonly number[]): number[] =>
    open
      .map((f) => ({ f, rank: cover.waysOf(f) * (1 + draw()) }))
      .sort((a, b) => a.rank - b.rank)
      .map(({ f }) => f);
  const poured: number[] = [];
  let most: readonly number[] = [];
  let patience = 0;

  const go = (wasted: number): boolean => {
    const kind = cover.hardest();
    if (kind === undefined) return true;
    if (poured.length >= most.length) most = [...poured];
    for (const f of inOrder(cover.open(kind))) {
      const waste = wasted + (listed[f]?.waste ?? 0);
      if (waste > spare) continue;
      if (patience-- <= 0) return false;
      patience = steps.spend(cover.pour(f)) ? patience : 0;
      poured.push(f);
      if (go(waste)) return true;
      poured.pop();
      cover.takeBack(f);
    }
    return false;
  };
  /** Pours what the deepest search had poured but for some pots here and there; gives what that wastes. */
  const keepMost = (): number => {
    let wasted = 0;
    for (const f of most) {
      if (draw() * most.length < AGAIN) continue;
      steps.spend(cover.pour(f));
      poured.push(f);
      wasted += listed[f]?.waste ?? 0;
    }
    return wasted;
  };
  for (let starts = 0; steps.spend(0); starts++) {
    const isAnew = starts % 10 === 0;
    // Longer from time to time: in the end all is tried.
    patience = isAnew ? PATIENCE * 2 ** Math.floor(starts / 300) : 100;
    if (go(isAnew ? 0 : keepMost())) return { fillings: poured.map((f) => cover.filling(f)), impossible: false };
    // Nothing was left untried.
    if (isAnew && patience > 0) return { impossible: true };
    for (const f of poured.splice(0)) cover.takeBack(f);
  }
  return { impossible: false };
}
