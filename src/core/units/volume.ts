import { checkedUnit } from "./checkedUnit";

const CUBIC_INCH = 16.387064; // mL, exactly 2.54 cubed: the inch is 2.54 cm (16 CFR 500.19)

const MILLILITRES = {
  ml: 1,
  l: 1000,
  floz: (231 / 128) * CUBIC_INCH, // the US gallon is 231 cubic inches, and 128 fluid ounces
  in3: CUBIC_INCH,
  cm3: 1,
} as const;

/** Millilitres in one of a volume unit: `ml`, `l`, `floz` (US fluid ounce), `in3` or `cm3`. Faults on any other. */
export function millilitresIn(name: string, unit: string): number {
  return MILLILITRES[checkedUnit("volume", name, unit)];
}
