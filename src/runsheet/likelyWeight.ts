import { plain } from "../core/check/plain";
import { ANY_WAX } from "../core/fill/checkedPour";
import type { WeightUnit } from "./settings";

/**
 * How far a fill may be from what the water and the wax factor of its vessel make before it is asked about, as a share
 * of it: the factors of waxes lie within that of the usual one. Common practice, no source.
 */
const FAR_FILL = 0.15;

/** Whether a fill is near enough to what its vessel is expected to hold. */
export const isNearFill = (fill: number, expected: number): boolean => Math.abs(fill - expected) <= FAR_FILL * expected;

/** Whether no wax weighs so much that fills what this much water filled: it runs over. Both in one unit. */
export const runsOver = (weight: number, water: number): boolean => weight > ANY_WAX.most * water;

/**
 * What one candle that was poured and weighed may be for one of its water. Wax floats on water, so more than the water
 * is no wax; what lies below is asked about: common practice, no source. A plan may fill less than to the line, and
 * has more room.
 */
export const POURED = { least: 0.7, most: 1 } as const;

/** Whether a wax factor may be one of a wax, typed or shown by a candle as weighed. */
export const isWaxFactor = (factor: number): boolean => factor >= POURED.least && factor <= POURED.most;

/** Whether no wax shows such a factor. */
export const isNoWax = (factor: number): boolean => factor < ANY_WAX.least || factor > ANY_WAX.most;

/**
 * How far a weight may be from what it should be before it is asked about, as a share of it. A millimetre of height is
 * near 3 % of a common vessel, so a steady hand stays within; the lightest tin, weighed along, adds 15 % and more, and
 * two digits that changed places as a rule more than 10 %. Common practice, no source.
 */
export const FAR = 0.1;

/** A weight with its unit, without the noise of the arithmetic. */
export const formatWeight = (weight: number, unit: WeightUnit): string =>
  `${plain(Number(weight.toPrecision(6)))} ${unit}`;
