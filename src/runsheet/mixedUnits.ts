import { plain } from "../core/check/plain";
import { besideWater, isImpossible, isLikely } from "./likelyWeight";
import type { PourRow } from "./readRows";
import { type KnownVessels, waterIn } from "./readVessels";
import type { WeightUnit } from "./settings";
import { headingOf, type Problem, readersOf, sameName, type TableRows } from "./tableReader";
import { scaleOf } from "./weightUnits";

/** Grams stand 28 times higher than ounces: a fill so far from the others may be in the other unit. */
const FAR = 20;

/** Columns of the table poured from whose headings name another unit than the setting, or no weight at all. */
export function otherUnits(table: TableRows<"pour">, setting: WeightUnit): Problem[] {
  // What no row is filled by is never read.
  const isRead = { fill: true, water: readersOf(table).some((row) => !row.isBlank("quantity") && row.isBlank("fill")) };
  return (["fill", "water"] as const).flatMap((role): Problem[] => {
    if (!isRead[role]) return [];
    const { ratio, problem } = scaleOf(table, role, setting);
    if (problem) return [{ ...problem, stops: ratio === undefined }];
    if (ratio === 1) return [];
    const heading = headingOf(table, role);
    const text = `The heading ${heading} and the setting "Weights in" (${setting}) differ; set the unit that the numbers are in: another heading converts none`;
    return [{ role, text, stops: true }];
  });
}

/** Fills that the water of their vessels, as the table of vessels knows it, does not bear out. */
export function unlikelyFills(rows: readonly PourRow[], vessels: KnownVessels, setting: WeightUnit): Problem[] {
  return rows.flatMap(({ row, vessel, fill }): Problem[] => {
    const water = waterIn(vessels.get(sameName(vessel)), setting);
    if (water === undefined || isLikely(fill, water)) return [];
    const text = `${vessel} is filled with ${besideWater(fill, water, setting)}; look at both, and at their units`;
    return [{ row, role: "fill", text, stops: isImpossible(fill, water) }];
  });
}

/** Fills so far from the others that they look as if they were in another unit. */
export function mixedFills(rows: readonly PourRow[]): Problem[] {
  const fills = rows.map(({ fill }) => fill).sort((a, b) => a - b);
  const middle = fills[Math.floor(fills.length / 2)];
  if (middle === undefined || fills.length < 3) return [];
  return rows.flatMap(({ row, vessel, fill }): Problem[] => {
    if (fill < middle * FAR && fill > middle / FAR) return [];
    const text = `${vessel} is filled with ${plain(fill)}, the middle one with ${plain(middle)}; is it in another unit?`;
    return [{ row, role: "fill", text, stops: false }];
  });
}
