import { plain } from "../core/check/plain";
import type { PourRow } from "./readRows";
import type { Settings } from "./settings";
import { type Problem, RowReader, type TableRows } from "./tableReader";
import { otherUnit, weightUnitOf } from "./weightUnits";

/** Grams stand 28 times higher than ounces: a fill so far from the others may be in the other unit. */
const FAR = 20;

/** Weights that look as if they were in another unit, or no weights at all. */
export function mixedUnits(table: TableRows<"pour">, rows: readonly PourRow[], settings: Settings): Problem[] {
  const problems: Problem[] = [];
  const reader = new RowReader(table, 0);
  for (const role of ["fill", "water"] as const) {
    const unit = reader.unit(role);
    const weight = weightUnitOf(unit);
    const other = otherUnit(unit);
    if (other) {
      problems.push({
        role,
        text: `The heading says ${unit}, ${other} and not a weight; weigh the water${
          other === "a volume" ? ", or use POUR.FILLBYVOLUME" : ", or choose another column"
        }`,
        stops: true,
      });
    } else if (weight !== undefined && weight !== settings.unit) {
      problems.push({
        role,
        text: `The heading says ${unit} and the setting "Weights in" says ${settings.unit}; make them the same`,
        stops: true,
      });
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
