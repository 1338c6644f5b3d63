import { atLeastZero } from "../check/atLeastZero";
import { oneOf } from "../check/oneOf";
import { wrong } from "../check/wrong";
import { centimetresIn } from "../units/length";
import { millilitresIn } from "../units/volume";

/**
 * Volume of a vessel from its inside measures up to the fill line.
 * Source: the solid geometry of a cone's frustum, a box and a spherical cap.
 * @param shape `round`, `box` or `bowl`
 * @param width round: at the foot; box: one side; bowl: of the rim at the fill line. 0 or more, in `lengthUnit`
 * @param fillHeight from the inside floor to the fill line, 0 or more, in `lengthUnit`
 * @param second round: width at the fill line of a tapered one (straight when left out);
 *   box: the other side (square when left out); bowl: none
 * @returns volume in `volumeUnit`
 */
export function vesselVolume(
  shape: string,
  width: number,
  fillHeight: number,
  second?: number,
  lengthUnit = "cm",
  volumeUnit = "ml",
): number {
  const kind = oneOf("shape", shape, ["round", "box", "bowl"]);
  const w = atLeastZero("width", width);
  const h = atLeastZero("fillHeight", fillHeight);
  const s = atLeastZero("second", second ?? width);
  if (kind === "bowl" && second !== undefined) {
    throw wrong("second", "a bowl has no second measure; leave it out");
  }
  const cubed = {
    round: () => (Math.PI / 12) * h * (w * w + w * s + s * s),
    box: () => w * s * h,
    bowl: () => (Math.PI / 6) * h * (3 * (w / 2) ** 2 + h * h),
  }[kind]();
  return (cubed * centimetresIn("lengthUnit", lengthUnit) ** 3) / millilitresIn("volumeUnit", volumeUnit);
}
