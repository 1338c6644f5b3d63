import { atLeastZero } from "../check/atLeastZero";
import { oneOf } from "../check/oneOf";
import { wrong } from "../check/wrong";
import { centimetresIn } from "../units/length";
import { millilitresIn } from "../units/volume";

/**
 * Volume of a vessel from its inside measures up to the fill line.
 * Source: the solid geometry of a cone's frustum, of upright prisms on a rectangle, an ellipse and a regular hexagon,
 * and of a spherical cap.
 * @param shape `round`, `box`, `oval`, `hexagon` or `bowl`
 * @param width round: at the foot; box: one side; oval: one axis; hexagon: across the flats; bowl: of the rim at the
 *   fill line. 0 or more, in `lengthUnit`
 * @param fillHeight from the inside floor to the fill line, 0 or more, in `lengthUnit`
 * @param second round: width at the fill line of a tapered one (straight when left out);
 *   box: the other side (square when left out); oval: the other axis; hexagon and bowl: none
 * @returns volume in `volumeUnit`
 */
export function vesselVolume(
  shape: string,
  width: number,
  fillHeight: number,
  lengthUnit: string,
  second?: number,
  volumeUnit = "ml",
): number {
  const kind = oneOf("shape", shape, ["round", "box", "oval", "hexagon", "bowl"]);
  const w = atLeastZero("width", width);
  const h = atLeastZero("fillHeight", fillHeight);
  const s = atLeastZero("second", second ?? width);
  if (second !== undefined && (kind === "bowl" || kind === "hexagon")) {
    throw wrong("second", `a ${kind} has no second measure; leave it out`);
  }
  if (second === undefined && kind === "oval") {
    throw wrong("second", "an oval has two axes; give the other one, or write round");
  }
  const cubed = {
    round: () => (Math.PI / 12) * h * (w * w + w * s + s * s),
    box: () => w * s * h,
    oval: () => (Math.PI / 4) * w * s * h,
    hexagon: () => (Math.sqrt(3) / 2) * w * w * h,
    bowl: () => (Math.PI / 6) * h * (3 * (w / 2) ** 2 + h * h),
  }[kind]();
  return (cubed * centimetresIn("lengthUnit", lengthUnit) ** 3) / millilitresIn("volumeUnit", volumeUnit);
}
