import { expect, it } from "vitest";
import { wickAt } from "../../../src/core/burn/wickAt";
import { wickCompare } from "../../../src/core/burn/wickCompare";

/** Even numbers from 0 to 1, the same each time (Mulberry32, from memory). */
function randomOf(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

const SERIES = 10_000;

/** A series as it may turn out: four wicks, three candles each, on a line with a spread like a test burn's. Invented. */
function seriesOf(random: () => number) {
  const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  return [4, 6, 8, 10].flatMap((x) => [0, 1, 2].map(() => ({ x, y: 2 + 0.5 * x + 0.25 * normal() })));
}

it("holds the true size in 95 of 100 intervals", () => {
  const random = randomOf(1);
  let held = 0;
  for (let i = 0; i < SERIES; i++) {
    const { lower, upper } = wickAt(seriesOf(random), 5.5);
    if (lower <= 7 && 7 <= upper) held++;
  }
  // Of 10,000 with a chance of 95 %, 95 % +- 0.44 points hold it in 19 series of 20.
  expect(held / SERIES).toBeGreaterThan(0.94);
  expect(held / SERIES).toBeLessThan(0.96);
});

it("holds the true mean of a wick in 95 of 100 intervals", () => {
  const random = randomOf(2);
  let held = 0;
  for (let i = 0; i < SERIES; i++) {
    const tried = seriesOf(random).map(({ x, y }) => ({ wick: x, value: y }));
    const { interval } = wickCompare(tried, (wick) => wick)[0] as { interval: unknown };
    const [lower, upper] = interval as readonly [number, number];
    if (lower <= 4 && 4 <= upper) held++;
  }
  expect(held / SERIES).toBeGreaterThan(0.94);
  expect(held / SERIES).toBeLessThan(0.96);
});
