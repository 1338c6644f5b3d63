import { gramsIn } from "../../core/units/weight";
import type { WeightUnit } from "../settings";
import type { HeadingUnit } from "./headings/headingUnit";

/** How many of the unit `to` one of a heading's unit is; 1 where it names no weight. */
export function weightRatio(unit: HeadingUnit | undefined, to: WeightUnit): number {
  if (!unit || !("weight" in unit) || unit.weight === to) return 1;
  return gramsIn("unit", unit.weight) / gramsIn("unit", to);
}
