import { gzipSync } from "node:zlib";
import { bundle, caller } from "./built";
import { atMost, type Figure, median, type Part, processorTimeOf, ratiosOf, spread } from "./figures";

const CELLS = 100_000;

type Column<T> = readonly (readonly [T])[];
const column = <T>(of: (i: number) => T): Column<T> =>
  // As a host hands it over.
  JSON.parse(JSON.stringify(Array.from({ length: CELLS }, (_, i) => [of(i)])));

const weights = column((i) => 100 + i / 100);
const loads = column((i) => 0.05 + (i % 50) / 1000);
const bases = column((i) => (i % 2 === 0 ? "of wax" : "of total"));
const units = column((i) => ["g", "oz", "kg", "lb"][i % 4] as string);
const GRAMS: Readonly<Record<string, number>> = { g: 1, kg: 1000, oz: 28.349523125, lb: 453.59237 };

/** The bare loop: the same arithmetic for each row, and nothing asked. Each is compiled by itself, as one that stands alone. */
function bare(of: (i: number) => number | string): () => unknown {
  const text = "const rows = []; for (let i = 0; i < cells; i++) rows.push([of(i)]); return rows;";
  const loop = new Function("of", "cells", text);
  return () => loop(of, CELLS);
}
const at = <T>(list: Column<T>, i: number): T => (list[i] as readonly [T])[0];

/** The bare loop of the largest remainder: who is raised shows once all remainders are sorted. */
function weighedOut(): unknown {
  const lost = new Float64Array(CELLS);
  let missing = 0;
  for (let i = 0; i < CELLS; i++) missing += lost[i] = (at(weights, i) / 0.1) % 1;
  const least = lost.slice().sort()[CELLS - Math.round(missing)] as number;
  const rows: number[][] = [];
  for (let i = 0; i < CELLS; i++) {
    const raised = (lost[i] as number) >= least ? 1 : 0;
    rows.push([(Math.floor(at(weights, i) / 0.1) + raised) * 0.1]);
  }
  return rows;
}

const PLAIN = 1.5;
const TWO = 4;
const LABEL = 10;

type Case = [what: string, most: number, given: unknown[], bare: () => unknown];
const cases: Record<string, readonly Case[]> = {
  FILLWEIGHT: [
    ["one column", PLAIN, [weights, [[0.86]]], bare((i) => at(weights, i) * 0.86)],
    ["two columns", TWO, [weights, loads], bare((i) => at(weights, i) * at(loads, i))],
  ],
  SCENTPART: [
    ["one column", PLAIN, [weights, [[0.08]]], bare((i) => at(weights, i) - at(weights, i) / 1.08)],
    [
      "a column of texts",
      TWO,
      [weights, [[0.08]], bases],
      bare((i) => at(weights, i) - at(weights, i) * (at(bases, i) === "of wax" ? 1 / 1.08 : 0.92)),
    ],
  ],
  WAXPART: [
    ["one column", PLAIN, [weights, [[0.08]]], bare((i) => at(weights, i) / 1.08)],
    ["two columns", TWO, [weights, loads], bare((i) => at(weights, i) / (1 + at(loads, i)))],
  ],
  BURNHOURS: [["one column", PLAIN, [weights, [[5]]], bare((i) => at(weights, i) / 5)]],
  ASKPRICE: [["one column", PLAIN, [weights, [[0.4]]], bare((i) => at(weights, i) / (1 - 0.4))]],
  WEIGHERROR: [["one column", PLAIN, [weights, [[0.1]]], bare((i) => 0.05 / at(weights, i))]],
  FILLBYVOLUME: [
    [
      "a column of units",
      TWO,
      [weights, [["ml"]], units],
      bare((i) => (at(weights, i) * 0.86) / (GRAMS[at(units, i)] as number)),
    ],
  ],
  UNITPRICE: [["units", TWO, [weights, [[50]], [["g"]], [["kg"]]], bare((i) => at(weights, i) / (50 / 1000))]],
  WEIGHOUT: [["one column", TWO, [weights, 0.1], weighedOut]],
  NETLABEL: [
    [
      "one column",
      LABEL,
      [weights, [["g"]]],
      bare((i) => `Net Wt ${Math.floor(at(weights, i) * 3.5274) / 100} oz (${Math.floor(at(weights, i))} g)`),
    ],
  ],
};

/** One cell a call, as a column of formulas makes them, against a bare call. */
async function singleCells(): Promise<Figure> {
  const call = caller("FILLWEIGHT");
  const times = (water: number, factor: number) => [[water * factor]];
  const [ratios = []] = await ratiosOf(
    [
      () => Array.from({ length: CELLS }, (_, i) => times(at(weights, i), 0.86)),
      () => Array.from({ length: CELLS }, (_, i) => call([weights[i]], [[0.86]])),
    ],
    9,
    { time: processorTimeOf },
  );
  return { what: "FILLWEIGHT, a call a cell, against a bare call", is: spread(ratios, " x") };
}

async function script(): Promise<Figure[]> {
  const bytes = gzipSync(bundle.script).length;
  const standIn = { associate: () => {}, Error, ErrorCode: {} };
  // A new text each time: the engine remembers those it has read.
  let count = 0;
  const evaluate = (text: string) => () => new Function("CustomFunctions", `${text}\n//${++count}`)(standIn);
  const [ratios = []] = await ratiosOf([evaluate(""), evaluate(bundle.script)], 15);
  return [
    { what: "functions.js, bytes over the wire", is: `${bytes}`, goal: "below 24000", holds: bytes < 24_000 },
    { what: "functions.js evaluated, against an empty script", is: spread(ratios, " x") },
  ];
}

export const functions: Part = {
  title: "Functions of 100,000 rows, as Excel calls them, against the bare loop, by time of a processor",
  measure: async () => {
    const figures: Figure[] = [];
    for (const [name, list] of Object.entries(cases)) {
      const call = caller(name);
      for (const [what, most, given, loop] of list) {
        const [ratios = []] = await ratiosOf([loop, () => call(...given)], 15, { warm: 5, time: processorTimeOf });
        if (!(median(ratios) > 0)) throw new Error(`${name} took no time`);
        figures.push(atMost(`${name}, ${what}`, ratios, most));
      }
    }
    return [...figures, await singleCells(), ...(await script())];
  },
};
