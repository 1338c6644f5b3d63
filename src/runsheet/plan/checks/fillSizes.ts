import { plain } from "../../../core/check/plain";
import { gramsIn } from "../../../core/units/weight";
import { besideWater, isImpossible, isLikely } from "../../likelyWeight";
import type { Problem } from "../../problem";
import { sameName } from "../../sameName";
import type { WeightUnit } from "../../settings";
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

/** Fills that the water of their vessels, as the table of vessels knows it, does not bear out. */
export function unlikelyFills(rows: readonly PourRow[], vessels: Vessels, setting: WeightUnit): Problem[] {
  return rows.flatMap(({ row, vessel, fill }): Problem[] => {
    const water = vessels.get(sameName(vessel))?.water;
    if (water === undefined || isLikely(fill, water)) return [];
    const text = `${vessel} is filled with ${besideWater(fill, water, setting)}; check both, and their units`;
    return [{ row, field: "fill", severity: isImpossible(fill, water) ? "error" : "warning", text }];
  });
}

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
