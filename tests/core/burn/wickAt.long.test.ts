import { expect, it } from "vitest";
import { wickAt } from "../../../src/core/burn/wickAt";
import { wickCompare } from "../../../src/core/burn/wickCompare";
import { normalOf, randomOf } from "./random";

const SERIES = 10_000;

/** A series as it may turn out: four wicks, three candles each, on a line with a spread like a test burn's. Invented. */
function seriesOf(random: () => number) {
  const normal = normalOf(random);
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

it("tells apart wicks that burn alike in at most 5 of 100 series", () => {
  const random = randomOf(3);
  const normal = normalOf(random);
  let apart = 0;
  for (let i = 0; i < SERIES; i++) {
    // Four wicks of one mean and spreads of their own.
    const tried = [1, 2, 3, 4].flatMap((wick) => [0, 1, 2].map(() => ({ wick, value: 5 + 0.1 * wick * normal() })));
    if (wickCompare(tried, (wick) => wick).some(({ alike }) => alike.length < 3)) apart++;
  }
  // 5 % and what 10,000 series may miss it by.
  expect(apart / SERIES).toBeLessThan(0.055);
  expect(apart).toBeGreaterThan(0);
});
