import { factor as waxFactor } from "../../core/check/factor";
import { plain } from "../../core/check/plain";
import { isLikely } from "../likelyWeight";
import type { WeightUnit } from "../settings";
import { type HeadingUnit, headingUnit } from "./headings/headingUnit";
import { headingOf, type Problem, readersOf, sameName, type TableRows } from "./tableReader";
import { weightRatio } from "./weightUnits";

/** A vessel of the table: the water it holds, its wax factor, and the row that says so. */
export interface KnownVessel {
  readonly row: number;
  readonly vessel: string;
  /** In the unit that the heading names; undefined until it is weighed, and where the heading names no weight. */
  readonly water: number | undefined;
  readonly unit: HeadingUnit | undefined;
  readonly factor: number | undefined;
  /** Why its water or its factor cannot be read. */
  readonly wrong: readonly Problem[];
  readonly looks: readonly Problem[];
}

/** The vessels by name. */
export type KnownVessels = ReadonlyMap<string, KnownVessel>;

/** The vessels of a table. Of a vessel that stands twice the first row is taken. */
export function readVessels(table: TableRows<"vessels"> | undefined): KnownVessels {
  const found = new Map<string, KnownVessel & { readonly looks: Problem[] }>();
  const unit = table && headingUnit(headingOf(table, "water"));
  for (const reader of table ? readersOf(table) : []) {
    const vessel = reader.text("vessel");
    if (vessel === "") continue;
    const first = found.get(sameName(vessel));
    if (first) {
      first.looks.push(reader.look("vessel", `${vessel} stands twice; the first row is taken`));
      continue;
    }
    const [water, typed] = [reader.number("water"), reader.number("factor")];
    const factor = typed === undefined ? undefined : reader.check(() => waxFactor("factor", typed));
    const looks: Problem[] = [];
    if (factor !== undefined && !isLikely(factor, 1)) {
      looks.push(reader.look("factor", `${vessel} has the wax factor ${plain(factor)}; most waxes are near 0.86`));
    }
    const isWeight = !unit || !("other" in unit);
    if (!isWeight) {
      const text = `The heading of the water weight says ${unit.words}, ${unit.other} and not a weight: no factor is learnt by it`;
      looks.push({ kind: "vessels", role: "water", text, stops: false });
    }
    if (unit && "unknown" in unit) {
      const text = `The heading of the water weight says ${unit.unknown}, which is no unit known here; its numbers are taken in the unit of the settings`;
      looks.push({ kind: "vessels", role: "water", text, stops: false });
    }
    const weighed = isWeight && water !== undefined && water > 0 ? water : undefined;
    found.set(sameName(vessel), { row: reader.row, vessel, water: weighed, unit, factor, wrong: reader.wrong, looks });
  }
  return found;
}

/** The water a vessel holds, in this unit; undefined where it is not known. */
export function waterIn(vessel: KnownVessel | undefined, unit: WeightUnit): number | undefined {
  return vessel?.water === undefined ? undefined : vessel.water * weightRatio(vessel.unit, unit);
}
