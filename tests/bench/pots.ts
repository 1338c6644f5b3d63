import loadHighs from "highs";
import { packPots } from "../../src/core/batch/packPots";
import { demoDay, type Input, manyFills, randomFrom, someDay, triplets, u120, uniform } from "../core/batch/inputs";
import { firstFitDecreasing } from "../core/batch/simplePackers";
import { type Figure, median, type Part, processorTimeOf, short, spread, timeOf } from "./figures";

const list = (count: number, of: (seed: number) => Input): Input[] => Array.from({ length: count }, (_, i) => of(i));

const classes: Record<string, readonly Input[]> = {
  "u120 (OR-Library)": u120,
  u250: list(20, (i) => uniform(250, 2500 + i)),
  u500: list(20, (i) => uniform(500, 5000 + i)),
  t60: list(20, (i) => triplets(600 + i, 20)),
  t120: list(20, (i) => triplets(1200 + i, 40)),
  t249: list(20, (i) => triplets(2490 + i, 83)),
  "random studio days": list(1000, (i) => someDay(10_000 + i)),
  "80 different fills": list(20, (i) => manyFills(80, i)),
  "120 different fills": list(20, (i) => manyFills(120, i)),
  "200 different fills": list(20, (i) => manyFills(200, i)),
  "300 different fills": list(20, (i) => manyFills(300, i)),
};

function measured(name: string, inputs: readonly Input[]): Figure[] {
  let [pots, bound, proven, simple] = [0, 0, 0, 0];
  const [times, plain]: [number[], number[]] = [[], []];
  for (const { weights, counts, capacity } of inputs) {
    times.push(
      processorTimeOf(() => {
        const packing = packPots(weights, counts, capacity);
        pots += packing.pots.length;
        bound += packing.bound;
        if (packing.pots.length === packing.bound) proven++;
      }),
    );
    plain.push(
      processorTimeOf(() => {
        simple += firstFitDecreasing(weights, counts, capacity);
      }),
    );
  }
  const of = inputs.length;
  const longest = Math.max(...times);
  return [
    {
      what: `${name}: pots, the bound, first-fit`,
      is: `${pots}, ${bound}, ${simple}; ${proven} of ${of} proven`,
      goal: "all proven",
      holds: proven === of,
    },
    {
      what: `${name}: processor, the longest, first-fit`,
      is: `${spread(times, " ms")}, ${short(longest)}, ${short(median(plain))}`,
      goal: "under 1 s in a cell",
      holds: longest < 1000,
    },
  ];
}

/** Every way to fill one pot. */
function fillingsOf({ weights, counts, capacity }: Input, from = 0, room = capacity): number[][] {
  if (from === weights.length) return [[]];
  const most = Math.min(counts[from] as number, Math.floor(room / (weights[from] as number)));
  return Array.from({ length: most + 1 }, (_, n) => n).flatMap((n) =>
    fillingsOf({ weights, counts, capacity }, from + 1, room - n * (weights[from] as number)).map((rest) => [
      n,
      ...rest,
    ]),
  );
}

/** Small days, for the integer-programming library needs every filling there is. */
async function againstLibrary(): Promise<Figure> {
  const highs = await loadHighs();
  const random = randomFrom(7);
  const whole = (least: number, most: number) => least + Math.floor(random() * (most - least + 1));
  const ratios: number[] = [];
  for (let i = 0; i < 15; i++) {
    const weights = Array.from({ length: 6 }, () => whole(60, 300));
    const input = { weights, counts: weights.map(() => whole(1, 120)), capacity: 400 };
    const fillings = fillingsOf(input).filter((filling) => filling.some((n) => n > 0));
    const names = fillings.map((_, f) => `x${f}`);
    const rows = weights.map((_, k) => {
      const terms = fillings.flatMap((filling, f) => (filling[k] ? [`${filling[k]} x${f}`] : []));
      return ` c${k}: ${terms.join(" + ")} >= ${input.counts[k]}`;
    });
    const problem = `Minimize\n obj: ${names.join(" + ")}\nSubject To\n${rows.join("\n")}\nGeneral\n ${names.join(" ")}\nEnd`;
    let [theirs, ours] = [0, 0];
    const theirTime = await timeOf(() => {
      const solved = highs.solve(problem, { output_flag: false, mip_rel_gap: 0, mip_abs_gap: 0.5 });
      theirs = Math.round(solved.ObjectiveValue);
    });
    const ourTime = await timeOf(() => {
      ours = packPots(input.weights, input.counts, input.capacity).pots.length;
    });
    if (ours !== theirs) throw new Error(`${ours} pots, and ${theirs} by the library`);
    ratios.push(ourTime / theirTime);
  }
  return {
    what: "small days against the library (as few pots)",
    is: spread(ratios, " x"),
    goal: "at most 0.1 x",
    holds: median(ratios) <= 0.1,
  };
}

export const pots: Part = {
  title: "Pots: how many, proven or not, and the time",
  measure: async () => {
    // So that none is measured cold.
    for (const { weights, counts, capacity } of [demoDay, ...u120]) packPots(weights, counts, capacity);
    const figures: Figure[] = [];
    for (const [name, inputs] of Object.entries(classes)) figures.push(...measured(name, inputs));
    return [...figures, await againstLibrary()];
  },
};
