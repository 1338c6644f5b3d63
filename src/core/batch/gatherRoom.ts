import { bestFilling } from "./bestFilling";
import { draws } from "./draws";
import { dot, type Filling, potsIn, ROOM, type SamePots } from "./filling";
import type { Steps } from "./steps";

/** With more pots than this nothing is tried: rounded fractional pots serve large numbers of a kind. */
const MOST_POTS = 1000;
/** In how many pots room is gathered without a gain: the emptiest, and the next ones, for of a few candles few fit. */
const TURNS = 6;
/** Fillings tried for two pots. */
const PATIENCE = 500;

/**
 * Gathers the room that pots leave empty in one of them, until its candles fit into another and a pot is saved; ends
 * when there are as few as the goal, or nothing is gained. The one is put together with each other pot: the other is
 * filled as full as the candles of both allow, and the one takes the rest. A local search: no source.
 * @param sizes shares of a pot
 */
export function gatherRoom(
  sizes: readonly number[],
  filled: readonly SamePots[],
  goal: number,
  steps: Steps,
): SamePots[] {
  if (potsIn(filled) > MOST_POTS) return [...filled];
  const pots: Filling[] = filled.flatMap(({ filling, times }) => Array<Filling>(times).fill(filling));
  const draw = draws();
  for (let turn = 0; turn < TURNS && pots.length > goal; turn++) {
    const fullness = new Map(pots.map((pot) => [pot, dot(sizes, pot)]));
    pots.sort((a, b) => (fullness.get(a) as number) - (fullness.get(b) as number));
    let [one] = pots.splice(Math.min(turn, pots.length - 1), 1) as [Filling];
    for (const at of inAnyOrder([...pots.keys()], draw)) {
      if (!steps.spend(sizes.length + 20)) break;
      [pots[at], one] = fullerFirst(sizes, pots[at] as Filling, one, steps, draw);
    }
    if (one.some((n) => n > 0)) pots.push(one);
    // A pot was saved: from the emptiest again.
    else turn = -1;
  }
  return pots.map((filling) => ({ filling, times: 1 }));
}

/**
 * The candles of two pots, with as much as is found in the first, or as they are where that would be less. Tried in any
 * order, or the smallest candles, of which not many sums can be made, would gather with the room.
 */
function fullerFirst(
  sizes: readonly number[],
  first: Filling,
  second: Filling,
  steps: Steps,
  draw: () => number,
): [Filling, Filling] {
  const both = first.map((n, i) => n + (second[i] as number));
  const held = [...both.keys()].filter((i) => (both[i] as number) > 0);
  const kinds = inAnyOrder(held, draw);
  const size = kinds.map((i) => sizes[i] as number);
  const count = kinds.map((i) => both[i] as number);
  const full = dot(sizes, first) - 1e-9;
  const { filling, value, tried } = bestFilling(size, count, ROOM, size, full, PATIENCE);
  steps.spend(4 * tried);
  if (value <= full) return [first, second];
  const most = first.map(() => 0);
  for (const [k, i] of kinds.entries()) most[i] = filling[k] as number;
  return [most, both.map((n, i) => n - (most[i] as number))];
}

const inAnyOrder = (list: readonly number[], draw: () => number): number[] =>
  list
    .map((one) => ({ one, rank: draw() }))
    .sort((a, b) => a.rank - b.rank)
    .map(({ one }) => one);
