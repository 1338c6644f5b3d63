import { atLeastZero } from "../check/atLeastZero";
import { celsius } from "../units/celsius";
import { millilitresIn } from "../units/volume";
import { gramsIn } from "../units/weight";
import { waterDensity } from "./waterDensity";

/**
 * Volume of weighed water.
 * Source: density by Tanaka et al. 2001.
 * @param water weight, 0 or more, in `weightUnit`
 * @param temperature of the water, 0 to 40 C; 20 C when left out, whatever `temperatureUnit` says
 * @returns volume in `volumeUnit`
 */
export function waterVolume(
  water: number,
  weightUnit: string,
  volumeUnit = "ml",
  temperature?: number,
  temperatureUnit = "C",
): number {
  const grams = atLeastZero("water", water) * gramsIn("weightUnit", weightUnit);
  // Read in any case: a unit that is not known is a slip, even where no temperature is given.
  const given = celsius(temperature ?? 0, "temperatureUnit", temperatureUnit);
  const degrees = temperature === undefined ? 20 : given;
  return grams / waterDensity(degrees) / millilitresIn("volumeUnit", volumeUnit);
}
