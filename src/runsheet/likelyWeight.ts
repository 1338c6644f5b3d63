import { plain } from "../core/check/plain";
import type { WeightUnit } from "./settings";

/** What waxes weigh for one of water, with room to spare: common practice, no source. Beyond it lies a slip. */
const LEAST = 0.5;
const MOST = 1.2;
/** More than this, for one of water, no vessel holds of any wax. */
const IMPOSSIBLE = 2;

/** Whether wax that fills what this much water filled may weigh so much; both in one unit. */
export const isLikely = (weight: number, water: number): boolean => weight >= LEAST * water && weight <= MOST * water;

/** Whether no wax weighs so much that fills what this much water filled. */
export const isImpossible = (weight: number, water: number): boolean => weight > IMPOSSIBLE * water;

/** The two beside each other, in words. */
export function besideWater(weight: number, water: number, unit: WeightUnit): string {
  const [wax, filled] = [weight, water].map((one) => `${plain(Number(one.toPrecision(6)))} ${unit}`);
  return `${wax}, and the water it holds weighs ${filled}`;
}
