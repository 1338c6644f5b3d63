import { describe, expect, it } from "vitest";
import { dot, potsIn, type SamePots } from "../../../src/core/batch/filling";
import { gatherRoom } from "../../../src/core/batch/gatherRoom";
import { Steps } from "../../../src/core/batch/steps";

const some = (filling: number[], times = 1): SamePots => ({ filling, times });
const held = (pots: readonly SamePots[], kinds: number): number[] =>
  Array.from({ length: kinds }, (_, i) =>
    pots.reduce((total, pot) => total + pot.times * (pot.filling[i] as number), 0),
  );

describe("gatherRoom", () => {
  // Candles of 60, 30 and 20 in pots of 100, four of them.
  const sizes = [0.6, 0.3, 0.2];
  const loose = [some([1, 0, 0]), some([1, 0, 1]), some([0, 2, 0]), some([0, 0, 2])];

  it("saves the pots whose candles fit into the room of the others, and keeps all candles", () => {
    // 240 of weight need three pots: 60 and 20 and 20, 60 and 30, 30 and 20.
    const gathered = gatherRoom(sizes, loose, 3, new Steps(1e6));
    expect(potsIn(gathered)).toBe(3);
    expect(held(gathered, 3)).toEqual(held(loose, 3));
    expect(gathered.every(({ filling }) => dot(sizes, filling) <= 1 + 1e-12)).toBe(true);
  });

  it("leaves pots as they are where the goal is met, the steps are gone, or there are too many", () => {
    expect(gatherRoom(sizes, loose, 4, new Steps(1e6))).toEqual(loose);
    expect(held(gatherRoom(sizes, loose, 3, new Steps(0)), 3)).toEqual(held(loose, 3));
    expect(potsIn(gatherRoom(sizes, loose, 3, new Steps(0)))).toBe(4);
    const many = [some([1, 0, 0], 2000), some([0, 1, 0])];
    expect(gatherRoom(sizes, many, 1, new Steps(1e9))).toEqual(many);
  });

  it("takes pots that hold the same one by one", () => {
    // Six of 30 alone in pots: three go into one.
    const alone = [some([0, 1, 0], 6)];
    const gathered = gatherRoom(sizes, alone, 2, new Steps(1e6));
    expect([potsIn(gathered), held(gathered, 3)]).toEqual([2, [0, 6, 0]]);
  });
});
