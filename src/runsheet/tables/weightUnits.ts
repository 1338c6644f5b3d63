import { gramsIn } from "../../core/units/weight";
import type { WeightUnit } from "../settings";
import { type HeadingUnit, headingUnit, NO_WEIGHT } from "./headings/headingUnit";
import type { KindName, Role } from "./kinds";
import { headingOf, type Problem, type TableRows } from "./tableReader";

/** How many of the unit `to` one of a heading's unit is; 1 where it names no weight. */
export function weightRatio(unit: HeadingUnit | undefined, to: WeightUnit): number {
  if (!unit || !("weight" in unit) || unit.weight === to) return 1;
  return gramsIn("unit", unit.weight) / gramsIn("unit", to);
}

/**
 * How many of the unit `to` one of a column's unit is, by its heading; undefined where the heading names what no
 * weight has. A problem where its words are not a weight that is known.
 */
export function scaleOf<K extends KindName>(
  table: TableRows<K>,
  role: Role<K>,
  to: WeightUnit,
): { ratio: number | undefined; problem?: Problem } {
  const heading = headingOf(table, role);
  const unit = headingUnit(heading);
  const look = (text: string): Problem => ({ kind: table.kind, role: role as Role, text, stops: false });
  if (unit && "other" in unit) {
    return { ratio: undefined, problem: look(`The heading ${heading} says ${unit.words}, ${NO_WEIGHT[unit.other]}`) };
  }
  if (unit && "unknown" in unit) {
    const text = `The heading ${heading} says ${unit.unknown}, which is no unit known here; its numbers are taken as ${to}`;
    return { ratio: 1, problem: look(text) };
  }
  return { ratio: weightRatio(unit, to) };
}
