import { atLeastZero } from "../check/atLeastZero";
import { factor } from "../check/factor";
import { millilitresIn } from "../units/volume";
import { gramsIn } from "../units/weight";

/**
 * Weight of wax and scent together that fills a volume.
 * Source: weight = volume x density; the default density is common practice.
 * @param volume 0 or more, in `volumeUnit`
 * @param density of the poured mixture in g/mL, above 0 and at most 2
 * @returns weight in `weightUnit`
 */
export function fillByVolume(volume: number, volumeUnit: string, weightUnit: string, density = 0.86): number {
  const millilitres = atLeastZero("volume", volume) * millilitresIn("volumeUnit", volumeUnit);
  return (millilitres * factor("density", density)) / gramsIn("weightUnit", weightUnit);
}
