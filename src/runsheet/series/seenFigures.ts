import { burnHours } from "../../core/burn/burnHours";
import { wickCompare } from "../../core/burn/wickCompare";
import { Fault } from "../../core/fault";
import { largest, least } from "../../core/longLists";
import { sameName } from "../sameName";
import type { SeenCandle } from "../seenCandle";

/** A mean, and the ends of its 95 % interval where its candles show how much they differ. */
export interface SeenMean {
  readonly mean: number;
  readonly interval: readonly [lower: number, upper: number] | undefined;
}

/** The melt pools at a full hour of a cycle, as shares of the inside width. */
export interface SeenPools {
  readonly hour: number;
  readonly least: number;
  readonly most: number;
}

/** Hours that a candle burns, and what says so. */
export interface SeenLife extends SeenMean {
  /** Candles that were burnt to their end; or the fill and the rate, down to the last of the wax. */
  readonly by: "burnt" | "rate";
  /** Candles it goes by. */
  readonly candles: number;
}

export interface SeenFigures {
  /** The highest flame in mm; undefined while none was read. */
  readonly flame: number | undefined;
  readonly pools: readonly SeenPools[];
  /** What was read of soot, each once; empty while nothing was. */
  readonly soot: readonly string[];
  /** The mean score of the throw, and how many scores. */
  readonly throw: { readonly mean: number; readonly scores: number } | undefined;
  readonly life: SeenLife | undefined;
}

/**
 * The figures of a wick beside its rate.
 * @param rate weight lost an hour, and the candles it goes by
 * @param fill wax and scent of a candle together, in the same unit; undefined where nobody knows
 */
export function seenFigures(
  candles: readonly SeenCandle[],
  rate: (SeenMean & { readonly candles: number }) | undefined,
  fill: number | undefined,
): SeenFigures {
  const flames = candles.flatMap(({ flame }) => flame ?? []);
  const scores = candles.flatMap(({ throws }) => throws);
  return {
    flame: flames.length > 0 ? largest(flames) : undefined,
    pools: poolsByHour(candles.flatMap(({ pools }) => pools)),
    soot: eachOnce(candles.flatMap(({ soot }) => soot)),
    throw: scores.length > 0 ? { mean: meanOf(scores).mean, scores: scores.length } : undefined,
    life: lifeOf(candles, rate, fill),
  };
}

function poolsByHour(pools: SeenCandle["pools"]): SeenPools[] {
  const hours = [...new Set(pools.map(({ hour }) => hour))].sort((a, b) => a - b);
  return hours.map((hour) => {
    const shares = pools.flatMap((pool) => (pool.hour === hour ? [pool.share] : []));
    return { hour, least: least(shares), most: largest(shares) };
  });
}

/** What was burnt to its end is seen; what the rate says is worked out. */
function lifeOf(
  candles: readonly SeenCandle[],
  rate: (SeenMean & { readonly candles: number }) | undefined,
  fill: number | undefined,
): SeenLife | undefined {
  const ends = candles.flatMap(({ end }) => end ?? []);
  if (ends.length > 0) return { by: "burnt", candles: ends.length, ...meanOf(ends) };
  if (!rate || fill === undefined || !(fill > 0)) return undefined;
  const [slow, fast] = rate.interval ?? [];
  return {
    by: "rate",
    candles: rate.candles,
    mean: burnHours(fill, rate.mean),
    // A rate that may be none burns for ever: then no end can be told.
    interval: slow && fast && slow > 0 ? [burnHours(fill, fast), burnHours(fill, slow)] : undefined,
  };
}

function meanOf(values: readonly number[]): SeenMean {
  const [all] = wickCompare(
    values.map((value) => ({ wick: "", value })),
    (wick) => wick,
  );
  const { mean, interval } = all as NonNullable<typeof all>;
  return { mean, interval: interval instanceof Fault ? undefined : interval };
}

function eachOnce(words: readonly string[]): string[] {
  const found = new Map<string, string>();
  for (const word of words) if (!found.has(sameName(word))) found.set(sameName(word), word);
  return [...found.values()];
}
