import { atLeastZero } from "../check/atLeastZero";
import { plain } from "../check/plain";
import { centimetresIn } from "../units/length";

const MOST = 75; // mm: EN 15493. ASTM F2417 says 3 in (76.2 mm, from memory): the lower of the two counts.

/**
 * Empty text when a flame is no higher than EN 15493 allows, else what is wrong. A tea light is allowed less, 30 mm.
 * Source: EN 15493.
 * @param height 0 or more, in `lengthUnit`
 */
export function flameCheck(height: number, lengthUnit = "mm"): string {
  const millimetres = atLeastZero("height", height) * (centimetresIn("lengthUnit", lengthUnit) * 10);
  if (millimetres <= MOST) return "";
  const shown = plain(Number(millimetres.toPrecision(6)));
  return `flame ${shown} mm high, at most ${MOST} mm by EN 15493; trim the wick or test a smaller one`;
}
