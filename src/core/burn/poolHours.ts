import { atLeastZero } from "../check/atLeastZero";
import { centimetresIn } from "../units/length";

/**
 * Hours for the melt pool to reach the wall: one for each inch of the inside diameter.
 * Source: common practice, no source.
 * @param diameter 0 or more, in `lengthUnit`
 */
export function poolHours(diameter: number, lengthUnit: string): number {
  return atLeastZero("diameter", diameter) * (centimetresIn("lengthUnit", lengthUnit) / centimetresIn("inch", "in"));
}
