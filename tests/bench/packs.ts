import loadHighs from "highs";
import { costOfPacks } from "../../src/core/buying/costOfPacks";
import { type Pack, packPlan } from "../../src/core/buying/packPlan";
import { randomFrom } from "../core/batch/inputs";
import { type Figure, median, type Part, spread, timeOf } from "./figures";

const random = randomFrom(3);
const between = (least: number, most: number) => least + random() * (most - least);

/** Sizes in whole, tenth or hundredth grams, each with its price. */
const offers = (kinds: number, decimals: number, priceOf: (size: number) => number): Pack[] =>
  Array.from({ length: kinds }, () => {
    const size = Number(between(2000, 5000).toFixed(decimals));
    return { size, price: Number(priceOf(size).toFixed(5)) };
  });
const cents = (price: number): number => Math.round(price * 100) / 100;

const NEED = 1_000_000;
const cases: Record<string, () => Pack[]> = {
  "12 sizes, any price": () => offers(12, 0, () => cents(between(1, 99))),
  "12 sizes, prices near the size": () => offers(12, 0, (size) => cents((size * between(95, 130)) / 10_000)),
  "12 sizes in tenths, one price a gram": () => offers(12, 1, (size) => size / 50),
  "12 sizes in hundredths, one price a gram": () => offers(12, 2, (size) => size / 50),
  "12 sizes in hundredths, the same to the cent": () => offers(12, 2, (size) => cents(size / 50)),
  "12 sizes in thousandths, one price a gram": () => offers(12, 3, (size) => size / 50),
  "4 sizes, any price": () => offers(4, 0, () => cents(between(1, 99))),
};

export const packs: Part = {
  title: `Packs for a need of ${NEED} g against the integer-programming library: cost and time`,
  measure: async () => {
    const highs = await loadHighs();
    const figures: Figure[] = [];
    let givenUp = 0;
    for (const [name, make] of Object.entries(cases)) {
      const [ratios, times]: [number[], number[]] = [[], []];
      let dearer = 0;
      for (let i = 0; i < 8; i++) {
        const list = make();
        const line = (of: (pack: Pack) => number) => list.map((pack, k) => `${of(pack)} x${k}`).join(" + ");
        const names = list.map((_, k) => `x${k}`).join(" ");
        const problem = `Minimize\n obj: ${line(({ price }) => price)}\nSubject To\n c: ${line(({ size }) => size)} >= ${NEED}\nGeneral\n ${names}\nEnd`;
        let theirs = Number.NaN;
        const theirTime = await timeOf(() => {
          const solved = highs.solve(problem, { output_flag: false, mip_rel_gap: 0, mip_abs_gap: 0, time_limit: 2 });
          theirs = solved.ObjectiveValue;
        });
        let counts: number[] | undefined;
        const ourTime = await timeOf(() => {
          try {
            counts = packPlan(NEED, list);
          } catch {
            givenUp++;
          }
        });
        if (counts && costOfPacks(counts, list) > theirs + 1e-6) dearer++;
        times.push(ourTime);
        ratios.push(ourTime / theirTime);
      }
      figures.push(
        { what: `${name}: dearer than the library`, is: `${dearer} of 8`, goal: "none", holds: dearer === 0 },
        {
          what: `${name}: time`,
          is: `${spread(ratios, " x")}; ${spread(times, " ms")}`,
          goal: "at most 0.1 x",
          holds: median(ratios) <= 0.1,
        },
      );
    }
    const growth = [1e3, 1e4, 1e5, 1e6, 1e7].map(async (need) => {
      const list = offers(12, 0, (size) => cents((size * between(95, 130)) / 10_000));
      return timeOf(() => packPlan(need, list));
    });
    const times = await Promise.all(growth);
    return [
      ...figures,
      { what: "given up", is: `${givenUp}`, goal: "none", holds: givenUp === 0 },
      { what: "needs of 10^3 to 10^7 g, 12 sizes", is: times.map((time) => `${time.toFixed(1)} ms`).join(", ") },
    ];
  },
};
