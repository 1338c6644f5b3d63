import { checkedUnit } from "./checkedUnit";

/** A temperature in `C` or `F` as degrees Celsius. Faults on any other unit. */
export function celsius(temperature: number, name: string, unit: string): number {
  return checkedUnit("temperature", name, unit) === "C" ? temperature : (temperature - 32) / 1.8;
}
