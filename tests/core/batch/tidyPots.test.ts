import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { packPots } from "../../../src/core/batch/packPots";
import { tidyPots } from "../../../src/core/batch/tidyPots";
import { cases } from "../../cases";

const lines = (pots: readonly (readonly number[])[]) => pots.flat().filter((n) => n > 0).length;
const weight = (pot: readonly number[], sizes: readonly number[]) =>
  pot.reduce((total, n, i) => total + n * (sizes[i] as number), 0);

describe("pots put together as a person would", () => {
  it("pours each vessel from one pot where it can", () => {
    // Four of 0.2 and two of 0.3, by hand: 0.8 and 0.6 in two pots, and none is split.
    const pots = [
      [2, 2],
      [2, 0],
    ];
    expect(tidyPots(pots, [0.2, 0.3]).map(String).sort()).toEqual(["0,2", "4,0"]);
  });

  it("leaves no pot nearly empty where another can give it a vessel", () => {
    // 0.5 and 0.45 beside 0.06: the 0.45 may go to the emptier pot.
    const [first, second] = tidyPots(
      [
        [1, 1, 0],
        [0, 0, 1],
      ],
      [0.5, 0.45, 0.06],
    ) as [number[], number[]];
    expect([weight(first, [0.5, 0.45, 0.06]), weight(second, [0.5, 0.45, 0.06])].sort()).toEqual([0.5, 0.51]);
  });

  it("leaves no pot with a last candle or two where another can share its vessel", () => {
    // 24 tins of which a pot holds 23 are twice 12; 25 of 0.04 and 6 more are 16 and 15.
    expect(tidyPots([[23], [1]], [1 / 23])).toEqual([[12], [12]]);
    expect(
      tidyPots([[25], [6]], [0.04])
        .map(String)
        .sort(),
    ).toEqual(["15", "16"]);
    // A pot that is more than a quarter full is left as it is.
    expect(tidyPots([[20], [6]], [0.05])).toEqual([[20], [6]]);
  });

  it("takes the evener of two ways that split as few orders", () => {
    // By hand, four lines either way: 2 x 0.3 + 2 x 0.2 = 1 beside 0.2 + 3 x 0.15 = 0.65, as given; or no vessel of
    // 0.2 apart, 3 x 0.2 + 0.15 = 0.75 beside 2 x 0.3 + 2 x 0.15 = 0.9.
    const given = [
      [2, 2, 0],
      [0, 1, 3],
    ];
    const tidy = tidyPots(given, [0.3, 0.2, 0.15]);
    expect(lines(tidy)).toBe(lines(given));
    const weights = tidy.map((pot) => weight(pot, [0.3, 0.2, 0.15])).sort();
    expect(weights).toEqual([expect.closeTo(0.75, 12), expect.closeTo(0.9, 12)]);
  });

  it("fills pots to the brim, in decimals too, and leaves long plans as they were packed", () => {
    // Ten of 0.1 and five of 0.2 are two full pots, whichever way they are split.
    const split = [
      [4, 3],
      [6, 2],
    ];
    expect(tidyPots(split, [0.1, 0.2]).map(String).sort()).toEqual(["0,5", "10,0"]);
    // A candle to a pot, five thousand of them: nothing to tidy, and too many to look.
    const long = Array<number[]>(5000).fill([1]);
    expect(tidyPots(long, [0.618])).toEqual(long);
  });

  it("keeps the candles, the room and the number of pots, and never splits more", () => {
    const kind = fc.tuple(fc.integer({ min: 20, max: 600 }), fc.integer({ min: 1, max: 12 }));
    let better = 0;
    fc.assert(
      fc.property(fc.array(kind, { minLength: 1, maxLength: 8 }), (kinds) => {
        const sizes = kinds.map(([size]) => size / 1000);
        const counts = kinds.map(([, count]) => count);
        const { pots } = packPots(sizes, counts, 1);
        const tidy = tidyPots(pots, sizes);
        expect(tidy.length).toBeLessThanOrEqual(pots.length);
        for (const pot of tidy) expect(weight(pot, sizes)).toBeLessThanOrEqual(1 + 1e-12);
        for (const [i, count] of counts.entries()) {
          expect(tidy.reduce((total, pot) => total + (pot[i] as number), 0)).toBe(count);
        }
        expect(lines(tidy)).toBeLessThanOrEqual(lines(pots));
        if (lines(tidy) < lines(pots)) better++;
      }),
      { numRuns: cases(300, 3000), seed: 1 },
    );
    // It is of use: most random days are poured with fewer splits.
    expect(better).toBeGreaterThan(cases(100, 1000));
  });
});
