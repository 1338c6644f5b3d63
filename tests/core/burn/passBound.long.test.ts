import { describe, expect, it } from "vitest";
import { passBound } from "../../../src/core/burn/passBound";
import { randomOf } from "./random";

const SERIES = 10_000;

/** The bound is one-sided and exact: passes are whole numbers, so it holds in at least 95 of 100 series, mostly in more. */
describe("the lowest pass rate", () => {
  it.each([
    [3, 0.3],
    [3, 0.9],
    [12, 0.75],
    [24, 0.5],
    [60, 0.95],
  ])("is no higher than the true one in at least 95 of 100 series of %i candles that pass at %f", (tried, rate) => {
    const random = randomOf(tried);
    const bounds = Array.from({ length: tried + 1 }, (_, passed) => passBound(passed, tried));
    let held = 0;
    for (let i = 0; i < SERIES; i++) {
      let passed = 0;
      for (let candle = 0; candle < tried; candle++) if (random() < rate) passed++;
      if ((bounds[passed] as number) <= rate) held++;
    }
    // What 10,000 series may miss it by.
    expect(held / SERIES).toBeGreaterThan(0.945);
  });

  it("is no higher in at least 95 %, counted out by the binomial distribution for every true rate", () => {
    let least = 1;
    for (const tried of [1, 2, 3, 5, 8, 13, 21, 34]) {
      const bounds = Array.from({ length: tried + 1 }, (_, passed) => passBound(passed, tried));
      for (let rate = 0.001; rate < 1; rate += 0.001) {
        let [held, choose] = [0, 1];
        for (let passed = 0; passed <= tried; passed++) {
          if (passed > 0) choose = (choose * (tried - passed + 1)) / passed;
          if ((bounds[passed] as number) <= rate) held += choose * rate ** passed * (1 - rate) ** (tried - passed);
        }
        expect(held, `${tried} at ${rate}`).toBeGreaterThan(0.95 - 1e-9);
        least = Math.min(least, held);
      }
    }
    // And no lower than it must be.
    expect(least).toBeLessThan(0.951);
  });
});
