import { bench, describe } from "vitest";
import { packPots } from "../src/core/batch/packPots";
import { demoDay, type Input, u120 } from "./core/batch/inputs";
import { bestFitDecreasing, firstFitDecreasing } from "./core/batch/simplePackers";

/** Pots beside time: each name says how many pots that way takes in all. */
function compare(name: string, inputs: readonly Input[]): void {
  const ways: Record<string, (input: Input) => number> = {
    "fewest pots": ({ weights, counts, capacity }) => packPots(weights, counts, capacity).pots.length,
    "first-fit decreasing": ({ weights, counts, capacity }) => firstFitDecreasing(weights, counts, capacity),
    "best-fit decreasing": ({ weights, counts, capacity }) => bestFitDecreasing(weights, counts, capacity),
  };
  const bound = inputs.reduce((total, input) => total + packPots(input.weights, input.counts, input.capacity).bound, 0);
  describe(`${name}, at least ${bound} pots`, () => {
    for (const [way, potsOf] of Object.entries(ways)) {
      const pots = inputs.reduce((total, input) => total + potsOf(input), 0);
      bench(`${way}: ${pots} pots, ${((100 * pots) / bound - 100).toFixed(2)} % over`, () => {
        for (const input of inputs) potsOf(input);
      });
    }
  });
}

compare("20 problems of 120 items", u120);
compare("a day of 12 vessels", [demoDay]);
