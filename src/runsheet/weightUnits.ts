import { gramsIn } from "../core/units/weight";
import type { WeightUnit } from "./settings";

/** Units as headings write them. */
const WEIGHTS: Readonly<Record<string, WeightUnit>> = {
  g: "g",
  gram: "g",
  grams: "g",
  kg: "kg",
  kilo: "kg",
  kilogram: "kg",
  kilograms: "kg",
  oz: "oz",
  ounce: "oz",
  ounces: "oz",
  lb: "lb",
  lbs: "lb",
  pound: "lb",
  pounds: "lb",
};
const VOLUMES = /^(ml|l|cl|fl\.? ?oz\.?|floz|fluid ounces?|cups?|in3|cm3)$/i;
const LENGTHS = /^(mm|cm|in|inch|inches)$/i;

/** The weight unit that a heading's words name: `kg`, `Grams`, `per kg`. */
export function weightUnitOf(words: string): WeightUnit | undefined {
  return WEIGHTS[words.trim().toLowerCase().replace(/^per /, "")];
}

/** What a heading's unit is, where it is one that no weight has. */
export function otherUnit(words: string): "a volume" | "a length" | undefined {
  const unit = words.trim();
  if (VOLUMES.test(unit)) return "a volume";
  return LENGTHS.test(unit) ? "a length" : undefined;
}

/** How many of the unit `to` one of the unit is that a heading's words name; 1 where they name none. */
export function weightRatio(words: string, to: WeightUnit): number {
  const from = weightUnitOf(words);
  return from === undefined || from === to ? 1 : gramsIn("unit", from) / gramsIn("unit", to);
}
