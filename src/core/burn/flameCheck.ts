import { atLeastZero } from "../check/atLeastZero";
import { plain } from "../check/plain";
import { checkedUnit } from "../units/checkedUnit";
import { millimetresIn } from "../units/length";
import { BEYOND } from "./openings";
import { productOf } from "./product";

// mm: EN 15493. ASTM F2417 says 3 in, 76.2 mm, from memory and to be compared with it: the lower of the two counts.
const MOST = { container: { high: 75, what: "" }, "tea light": { high: 30, what: " for a tea light" } } as const;

/**
 * Empty text when a flame is no higher than EN 15493 allows, else what is wrong.
 * Source: EN 15493.
 * @param height 0 or more, in `lengthUnit`
 * @param product `container` or `tea light`
 */
export function flameCheck(height: number, lengthUnit: string, product = "container"): string {
  const millimetres = atLeastZero("height", height) * millimetresIn("lengthUnit", lengthUnit);
  const { high: most, what } = MOST[productOf("product", product)];
  if (millimetres <= most) return "";
  const unit = checkedUnit("length", "lengthUnit", lengthUnit);
  const shown = `${plain(Number(millimetres.toPrecision(6)))} mm`;
  const high = unit === "mm" ? shown : `${plain(height)} ${unit} (${shown})`;
  return `${BEYOND.flame}${high} high, at most ${most} mm${what} by EN 15493; trim the wick or test a smaller one`;
}
