import { plain } from "../core/check/plain";
import type { KindName, Role } from "./kinds";
import type { PourRow } from "./readRows";
import type { Settings, WeightUnit } from "./settings";
import { headingOf, type Problem, type TableRows } from "./tableReader";
import { headingUnit, weightRatio } from "./weightUnits";

/** Grams stand 28 times higher than ounces: a fill so far from the others may be in the other unit. */
const FAR = 20;

/** Weights of the table poured from that look as if they were in another unit, or no weights at all. */
export function mixedUnits(table: TableRows<"pour">, rows: readonly PourRow[], settings: Settings): Problem[] {
  const problems: Problem[] = [];
  for (const role of ["fill", "water"] as const) {
    const { ratio, problem } = scaleOf(table, role, settings.unit);
    if (problem) problems.push({ ...problem, stops: ratio === undefined });
    else if (ratio !== 1) {
      const text = `The heading ${headingOf(table, role)} and the setting "Weights in" (${settings.unit}) differ; make them the same`;
      problems.push({ role, text, stops: true });
    }
  }
  const fills = rows.map(({ fill }) => fill).sort((a, b) => a - b);
  const middle = fills[Math.floor(fills.length / 2)];
  if (middle === undefined || fills.length < 3) return problems;
  for (const { row, vessel, fill } of rows) {
    if (fill < middle * FAR && fill > middle / FAR) continue;
    problems.push({
      row,
      role: "fill",
      text: `${vessel} is filled with ${plain(fill)}, the middle one with ${plain(middle)}; is it in another unit?`,
      stops: false,
    });
  }
  return problems;
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
    const way = unit.other === "a volume" ? "weigh it, or use POUR.FILLBYVOLUME" : "choose another column";
    return {
      ratio: undefined,
      problem: look(`The heading ${heading} says ${unit.words}, ${unit.other} and not a weight; ${way}`),
    };
  }
  if (unit && "unknown" in unit) {
    const text = `The heading ${heading} says ${unit.unknown}, which is no unit known here; its numbers are taken as ${to}`;
    return { ratio: 1, problem: look(text) };
  }
  return { ratio: weightRatio(unit, to) };
}
