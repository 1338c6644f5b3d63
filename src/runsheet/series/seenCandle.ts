import { type BurnFindings, type BurnReading, burnFindings } from "../../core/burn/burnFindings";
import { burnRate } from "../../core/burn/burnRate";
import { Fault } from "../../core/fault";
import type { Problem } from "../problem";
import type { BurnTest } from "../tables/burnTests";
import type { TestReading } from "../tables/readings";

/** What was seen of one candle. */
export interface SeenCandle extends BurnFindings {
  readonly test: BurnTest;
  /** Weight lost an hour; undefined while it cannot be told. */
  readonly rate: number | undefined;
  /** Hours it has burnt, all cycles together. */
  readonly hours: number;
  /** The highest flame in mm; undefined while none was read. */
  readonly flame: number | undefined;
  /** What cannot be read, in its row or its readings. */
  readonly wrong: readonly Problem[];
}

/** A reading whose place in the burn is known. */
type Placed = TestReading & BurnReading;

export function seenCandle(test: BurnTest, readings: readonly TestReading[]): SeenCandle {
  const placed = readings.filter((one): one is Placed => one.cycle !== undefined && one.minutes !== undefined);
  // Rows that were made for looks not yet taken say nothing.
  const taken = placed.filter(isTaken);
  const burnt = hoursBurnt(taken);
  const flames = taken.flatMap(({ flame }) => flame ?? []);
  return {
    test,
    ...findingsOf(test, taken),
    rate: rateOf(taken, burnt),
    hours: taken.reduce((most, one) => Math.max(most, burnt(one)), 0),
    flame: flames.length > 0 ? Math.max(...flames) : undefined,
    wrong: [...test.wrong, ...readings.flatMap((one) => one.wrong)],
  };
}

const isTaken = ({ weight, flame, pool, poolDepth, depth, soot, glass, remarks }: TestReading): boolean =>
  remarks !== "" || [weight, flame, pool, poolDepth, depth, soot, glass].some((value) => value !== undefined);

function findingsOf({ width, product }: BurnTest, taken: readonly Placed[]): BurnFindings {
  if (taken.length === 0) return { beyond: [], lacks: ["nothing is read yet; burn a first cycle"] };
  if (width === undefined) return { beyond: [], lacks: ["the inside width of its vessel is not known"] };
  try {
    return burnFindings(taken, width, "mm", "C", product);
  } catch (fault) {
    if (!(fault instanceof Fault)) throw fault;
    return { beyond: [], lacks: [fault.message] };
  }
}

/** The hours burnt at a reading: the cycles before it, each as long as it was looked at, and its own minutes. */
function hoursBurnt(taken: readonly Placed[]): (one: Placed) => number {
  const longest = new Map<number, number>();
  for (const { cycle, minutes } of taken) longest.set(cycle, Math.max(longest.get(cycle) ?? 0, minutes));
  return ({ cycle, minutes }) => {
    const before = [...longest].filter(([other]) => other < cycle).reduce((sum, [, most]) => sum + most, 0);
    return (before + minutes) / 60;
  };
}

function rateOf(taken: readonly Placed[], burnt: (one: Placed) => number): number | undefined {
  const weighed = taken.flatMap((one) => (one.weight === undefined ? [] : [{ hours: burnt(one), weight: one.weight }]));
  try {
    const rate = burnRate(weighed);
    return rate > 0 ? rate : undefined;
  } catch (fault) {
    if (!(fault instanceof Fault)) throw fault;
    return undefined;
  }
}
