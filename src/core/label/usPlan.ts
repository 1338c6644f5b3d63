import { gramsIn } from "../units/weight";
import { divisionsIn } from "../weighing/divisionsIn";
import type { LotPlan } from "./lotPlan";

/**
 * Maximum allowable variation in pounds for labels up to a weight in pounds: Handbook 133, Table 2-5. From memory, all
 * but the rows of 113 g and 907 g: not yet compared with the handbook. Its gram column is this one in grams, rounded
 * down: labels to whole grams and from a kilogram on to tens, variations to tenths and from 100 g on to whole grams.
 */
const VARIATIONS = [
  [0.12, 0.008],
  [0.18, 0.012],
  [0.26, 0.016],
  [0.34, 0.02],
  [0.46, 0.024],
  [0.58, 0.028],
  [0.7, 0.032],
  [0.84, 0.036],
  [0.94, 0.04],
  [1.08, 0.044],
  [1.26, 0.048],
  [1.4, 0.052],
  [1.54, 0.056],
  [1.7, 0.06],
  [1.88, 0.064],
  [2.14, 0.07],
  [2.48, 0.078],
  [2.76, 0.086],
  [3.2, 0.094],
  [3.9, 0.11],
  [4.7, 0.12],
  [5.8, 0.14],
  [6.8, 0.15],
  [7.9, 0.17],
  [9.4, 0.19],
  [11.7, 0.22],
  [14.3, 0.25],
  [17.7, 0.28],
  [23.2, 0.31],
  [31.6, 0.37],
  [42.4, 0.44],
  [54.4, 0.5],
] as const;

/** Below this a tenth of the label; above the table a fiftieth. */
const SMALLEST = { grams: 36, pounds: 0.08 } as const;

/**
 * How a lot is checked by NIST Handbook 133, Category A: how many to weigh, how many may be short by more than the
 * maximum allowable variation, and how sure the mean must be; a lot of one is judged by its variation alone. The
 * numbers of candles are from memory, as the table is.
 * @param label in grams, above 0
 * @param lot candles in it, 1 or more
 * @param inPounds whether the label is in pounds or ounces: each has its own column of the table
 */
export function usPlan(label: number, lot: number, inPounds: boolean): LotPlan {
  const [weigh, accept] = lot > 3200 ? [48, 1] : [lot > 250 ? 24 : Math.min(lot, 12), 0];
  return {
    allowed: inPounds ? byPounds(label) : byGrams(label),
    most: Number.POSITIVE_INFINITY,
    mean: lot === 1 ? "free" : "sample",
    sure: 0.95,
    stages: [{ weigh, accept, reject: accept + 1 }],
  };
}

const POUND = gramsIn("unit", "lb");

function byPounds(label: number): number {
  const pounds = divisionsIn(label, POUND);
  if (pounds < SMALLEST.pounds) return label * 0.1;
  const listed = VARIATIONS.find(([most]) => pounds <= most)?.[1];
  return listed === undefined ? label * 0.02 : listed * POUND;
}

function byGrams(label: number): number {
  if (label < SMALLEST.grams) return label * 0.1;
  const down = (pounds: number, step: number): number => Math.floor((pounds * POUND) / step) * step;
  const listed = VARIATIONS.find(([most]) => label <= down(most, most * POUND < 1000 ? 1 : 10))?.[1];
  if (listed === undefined) return label * 0.02;
  return listed * POUND < 100 ? Math.floor(listed * POUND * 10) / 10 : Math.floor(listed * POUND);
}
