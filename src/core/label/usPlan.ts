import type { LotPlan } from "./lotPlan";

/**
 * Maximum allowable variation in grams for labels up to a weight in grams: Handbook 133, Table 2-5. Written down from
 * memory, all but the values for 113 g and 907 g: to be compared with the handbook before a verdict is relied on.
 */
const VARIATIONS = [
  [54, 3.6],
  [81, 5.4],
  [117, 7.2],
  [154, 9],
  [208, 10.8],
  [263, 12.7],
  [317, 14.5],
  [381, 16.3],
  [426, 18.1],
  [489, 19.9],
  [571, 21.7],
  [635, 23.5],
  [698, 25.4],
  [771, 27.2],
  [852, 29],
  [970, 31.7],
  [1120, 35.3],
  [1250, 39],
  [1450, 42.6],
  [1760, 49.8],
  [2130, 54.4],
  [2630, 63.5],
  [3080, 68],
  [3580, 77.1],
  [4260, 86.1],
  [5300, 99.7],
  [6480, 113],
  [8020, 127],
  [10520, 140],
  [14330, 167],
  [19230, 199],
  [24670, 226],
] as const;

/**
 * How a lot is checked by NIST Handbook 133, Category A: how many to weigh, how many may be short by more than the
 * maximum allowable variation, and how sure the mean must be. The numbers of candles are from memory, as the table is.
 * @param label in grams, above 0
 * @param lot candles in it, 1 or more
 */
export function usPlan(label: number, lot: number): LotPlan {
  const listed = VARIATIONS.find(([most]) => label <= most)?.[1] ?? label * 0.02;
  const [weigh, accept] = lot > 3200 ? [48, 1] : [lot > 250 ? 24 : Math.min(lot, 12), 0];
  return {
    allowed: label < 36 ? label * 0.1 : listed,
    most: Number.POSITIVE_INFINITY,
    sure: 0.95,
    stages: [{ weigh, accept, reject: accept + 1 }],
  };
}
