import { plain } from "../check/plain";
import { type BurnReading, RULER } from "./burnReading";
import { TO_LOOK_AT } from "./openings";

const DENSITY = 0.9; // g/cm3 of wax, from memory; common practice
const FACTOR = 2; // between what the weights say and the wax left; common practice, no source
const RULERS = 2 * RULER; // mm that two readings may be out together

/** What the wax left and the weights say together. */
export interface WaxDoubts {
  /** By the weights more burnt than wax left is missing: perhaps the candle is not burnt down at all. */
  readonly lacks: readonly string[];
  /** More wax left is missing than burnt by the weights: also where a candle burns a hole, or its vessel is narrower below. */
  readonly remarks: readonly string[];
}

interface Look {
  readonly place: string;
  readonly weight: number;
  readonly left: number | undefined;
}

/**
 * Asks where the fall of the wax left does not go with what was burnt by weight in so wide a vessel.
 * @param wall inside width of the vessel in mm
 * @param millimetres in one of the unit of the depths
 * @param grams in one of the unit of the weights
 */
export function waxDoubt(
  readings: readonly BurnReading[],
  wall: number,
  millimetres: number,
  grams: number,
): WaxDoubts {
  const burnt = (from: Look, to: Look): number =>
    ((from.weight - to.weight) * grams * 1000) / (DENSITY * (Math.PI / 4) * wall ** 2);
  const [lacks, remarks]: [string[], string[]] = [[], []];
  for (const [from, to] of pairsOf(looksOf(readings, millimetres))) {
    const left = from.left as number;
    // Where nobody looked again there may be none.
    const fall = left - (to.left ?? 0);
    // Wax left that rises is asked about by itself.
    if (fall < -RULER) continue;
    const high = burnt(from, to);
    const about = `by the weights about ${plain(Math.round(high))} mm burnt: check both, and their units`;
    const fell = `${to.place}: ${TO_LOOK_AT.fall}fell by ${plain(Number(fall.toFixed(1)))} mm, ${about}`;
    if (high > FACTOR * (Math.max(fall, 0) + RULERS)) {
      lacks.push(
        to.left === undefined ? `${to.place}: ${TO_LOOK_AT.fall}was ${plain(left)} mm before, and ${about}` : fell,
      );
    } else if (to.left !== undefined && high >= 0 && fall > FACTOR * high + RULERS) remarks.push(fell);
  }
  return { lacks: lacks.slice(0, 1), remarks: remarks.slice(0, 1) };
}

/** Weighings in the order of the burn, each with the wax left where that was read at the same time. */
function looksOf(readings: readonly BurnReading[], millimetres: number): Look[] {
  const sorted = [...readings].sort((a, b) => a.cycle - b.cycle || a.minutes - b.minutes);
  return sorted.flatMap(({ cycle, minutes, weight, depth }) => {
    if (weight === undefined) return [];
    const left = depth === undefined ? undefined : Number((depth * millimetres).toPrecision(12));
    return [{ place: `cycle ${plain(cycle)} at ${plain(minutes)} min`, weight, left }];
  });
}

/** The first and the last look with both, those that follow each other, and the last with both and the last weighing. */
function pairsOf(looks: readonly Look[]): [from: Look, to: Look][] {
  const both = looks.filter(({ left }) => left !== undefined);
  const [first, last, weighed] = [both[0], both.at(-1), looks.at(-1)];
  if (!first || !last || !weighed) return [];
  const next = both.slice(1).map((to, i): [Look, Look] => [both[i] as Look, to]);
  return [[first, last], ...next, [last, weighed]].filter(([from, to]) => from !== to) as [Look, Look][];
}
