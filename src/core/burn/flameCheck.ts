import { atLeastZero } from "../check/atLeastZero";
import { plain } from "../check/plain";
import { centimetresIn } from "../units/length";

// mm: EN 15493. ASTM F2417 says 3 in, 76.2 mm, from memory and to be compared with it: the lower of the two counts.
const MOST = 75;

/**
 * Empty text when a flame is no higher than EN 15493 allows, else what is wrong. A tea light is allowed less, 30 mm.
 * Source: EN 15493.
 * @param height 0 or more, in `lengthUnit`
 */
export function flameCheck(height: number, lengthUnit = "mm"): string {
  const millimetres = atLeastZero("height", height) * (centimetresIn("lengthUnit", lengthUnit) * 10);
  if (millimetres <= MOST) return "";
  const unit = lengthUnit.trim();
  const shown = `${plain(Number(millimetres.toPrecision(6)))} mm`;
  const high = unit.toLowerCase() === "mm" ? shown : `${plain(height)} ${unit} (${shown})`;
  return `flame ${high} high, at most ${MOST} mm by EN 15493; trim the wick or test a smaller one`;
}
