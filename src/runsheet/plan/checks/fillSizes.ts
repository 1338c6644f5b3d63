import { plain } from "../../../core/check/plain";
import { USUAL_WAX_FACTOR } from "../../../core/fill/fillWeight";
import { gramsIn } from "../../../core/units/weight";
import { formatWeight, isNearFill, isWaxFactor, runsOver } from "../../likelyWeight";
import type { Problem } from "../../problem";
import { sameName } from "../../sameName";
import type { Settings, WeightUnit } from "../../settings";
import type { Vessels } from "../../tables/vessels";
import type { PourRow } from "../pourRows";

/** Grams stand 28 times higher than ounces: a fill so far from the others may be in the other unit. */
const FAR = 20;

/** Grams in one candle, from a tea light to a bowl of many wicks: common practice, no source. Others are asked about. */
const SMALLEST = 10;
const LARGEST = 3000;
/** The same for all candles of a table: narrower, for a table in ounces or grams by mistake is 28 times off. */
const ALL_SMALLEST = 20;
const ALL_LARGEST = 1500;

type FillSettings = Pick<Settings, "unit" | "waxFactor">;
type Doubt = Pick<Problem, "severity" | "text">;

/**
 * Fills that the water and the wax factor of their vessels do not bear out, as the row or else the table of vessels
 * knows them: each vessel and fill once. A vessel that would run over is an error, whatever its factor says.
 */
export function unlikelyFills(rows: readonly PourRow[], vessels: Vessels, settings: FillSettings): Problem[] {
  const said = new Set<string>();
  return rows.flatMap(({ row, vessel, fill, ...given }): Problem[] => {
    const known = vessels.get(sameName(vessel));
    const water = given.water ?? known?.water;
    const own = given.factor ?? known?.factor;
    const key = JSON.stringify([sameName(vessel), fill, water, own]);
    if (water === undefined || said.has(key)) return [];
    said.add(key);
    const doubt = fillDoubt({ vessel, fill, water, own }, settings);
    return doubt ? [{ row, field: "fill", ...doubt }] : [];
  });
}

interface Filled {
  readonly vessel: string;
  readonly fill: number;
  readonly water: number;
  /** The factor that the row or its vessel has. */
  readonly own: number | undefined;
}

function fillDoubt({ vessel, fill, water, own }: Filled, { unit, waxFactor }: FillSettings): Doubt | undefined {
  const begin = `${vessel} is filled with ${formatWeight(fill, unit)}, and the water it holds weighs ${formatWeight(water, unit)}`;
  if (runsOver(fill, water)) {
    const text = `${begin}: wax is lighter than water, so it would run over. Fix the wrong one, its unit or the wax factor`;
    return { severity: "error", text };
  }
  if (own === undefined && waxFactor !== USUAL_WAX_FACTOR && isAsGood(fill, water * USUAL_WAX_FACTOR)) {
    const text = `${vessel} is filled by the factor ${plain(USUAL_WAX_FACTOR)} of its sheet, and not by the default wax factor ${plain(waxFactor)} under Settings; write the one you mean beside its water`;
    return { severity: "warning", text };
  }
  // One that no wax has says nothing of a fill.
  const factor = [own, waxFactor].find((one) => one !== undefined && isWaxFactor(one)) ?? USUAL_WAX_FACTOR;
  if (isNearFill(fill, water * factor) && fill <= water) return undefined;
  const text = `${begin}: by the wax factor ${plain(factor)} that is ${formatWeight(water * factor, unit)}; check both, and their units`;
  return { severity: "warning", text };
}

/** Whether two weights differ by no more than a scale rounds. */
const isAsGood = (one: number, other: number): boolean => Math.abs(one - other) <= 0.005 * other;

/** Fills of a size that no container candle has, or so far from the others that they look as if in another unit. */
export function unlikelySizes(rows: readonly PourRow[], setting: WeightUnit): Problem[] {
  const grams = gramsIn("unit", setting);
  const weight = (inGrams: number) => `${plain(Number((inGrams / grams).toPrecision(3)))} ${setting}`;
  const isAll = (test: (inGrams: number) => boolean) => rows.length > 0 && rows.every(({ fill }) => test(fill * grams));
  const small = isAll((fill) => fill < ALL_SMALLEST);
  if (small || isAll((fill) => fill > ALL_LARGEST)) {
    const usual = `candles hold ${weight(ALL_SMALLEST)} to ${weight(ALL_LARGEST)} as a rule`;
    const text = `Every fill is very ${small ? "small" : "large"} for one in ${setting}: ${usual}. Are the weights in another unit?`;
    return [{ field: "fill", text, severity: "warning" }];
  }
  const middle = rows.map(({ fill }) => fill).sort((a, b) => a - b)[Math.floor(rows.length / 2)] as number;
  return rows.flatMap(({ row, vessel, fill }): Problem[] => {
    const isOdd = fill * grams < SMALLEST || fill * grams > LARGEST;
    const isFar = rows.length > 2 && (fill >= middle * FAR || fill <= middle / FAR);
    if (!isOdd && !isFar) return [];
    const beside = isOdd
      ? `candles hold ${weight(SMALLEST)} to ${weight(LARGEST)} as a rule`
      : `the middle one with ${plain(middle)} ${setting}`;
    const text = `${vessel} is filled with ${plain(fill)} ${setting}, ${beside}; is it in another unit?`;
    return [{ row, field: "fill", text, severity: "warning" }];
  });
}
