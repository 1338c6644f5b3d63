import { oneOf } from "../check/oneOf";

/** A temperature in `C` or `F` as degrees Celsius. Faults on any other unit. */
export function celsius(temperature: number, name: string, unit: string): number {
  return oneOf(name, unit, ["C", "F"]) === "C" ? temperature : (temperature - 32) / 1.8;
}
