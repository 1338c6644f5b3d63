import { factor as waxFactor } from "../../core/check/factor";
import { plain } from "../../core/check/plain";
import { addAll } from "../../core/longLists";
import { isWaxFactor } from "../likelyWeight";
import type { Problem } from "../problem";
import { sameName } from "../sameName";
import type { WeightUnit } from "../settings";
import { FACTOR, VESSEL, WATER } from "./commonFields";
import type { Field } from "./headings/field";
import { ASK_FACTOR, ASK_LIMIT, ASK_SHARE, ASK_WATER, has, type Question } from "./questions";
import { fillHeading, weightLook } from "./starterLooks";
import type { TableReader } from "./tableReader";
import { type Starter, tableType } from "./tableType";
import { WICK_TOOLS } from "./wick";

const FIELDS = {
  vessel: VESSEL,
  water: WATER,
  factor: FACTOR,
  wick: {
    name: "Wick",
    reads: "words",
    aliases: [
      "approved wick",
      "wick approved",
      "wick used",
      "wick type",
      "wick size",
      "wick name",
      "wick series",
      "wicks",
    ],
    not: ["scent", "wax", "price", "cost", "trimmed", "length", ...WICK_TOOLS],
  },
} satisfies Readonly<Record<string, Field>>;

const ASK_WAX_WEIGHT: Question = {
  isAsked: (column) => has(column, ["wax"]) && (column.isWeight || (column.isNumeric && has(column, ["weight"]))),
  text: () =>
    "is not read: vessels are filled by their water weight and wax factor. Write the factor, as POUR.WAXFACTOR works it out, or leave the column out",
  figure: "fill",
};

export const VESSELS = tableType({
  name: "Vessels",
  purpose:
    "The water each vessel holds and, where a pour has shown it, its wax factor. Runs are logged with it, and the factor they show goes here. The wick that your burn tests approved for it stands on the run sheet, and is counted and paid for as components are, unless these name it.",
  gives: "Vessels: water weights, wax factors and wicks.",
  fields: FIELDS,
  needs: [["vessel"], ["water"]],
  unusable: "warning",
  asks: [ASK_LIMIT, ASK_FACTOR, ASK_WATER, ASK_WAX_WEIGHT, ASK_SHARE],
  starter,
  read: readVessels,
});

/** A vessel: the water it holds, its wax factor, and the row that says so. */
export interface Vessel {
  readonly row: number;
  readonly vessel: string;
  /** Undefined until it is weighed, and where the heading names no weight. */
  readonly water: number | undefined;
  readonly factor: number | undefined;
  /** The approved one, in the maker's words; empty where none is given. */
  readonly wick: string;
  /** Why its water or its factor cannot be read. */
  readonly wrong: readonly Problem[];
  readonly looks: readonly Problem[];
}

/** The vessels by name. */
export type Vessels = ReadonlyMap<string, Vessel>;

/** Of a vessel that stands twice the first row is taken. */
function readVessels(table: TableReader<keyof typeof FIELDS>): Vessels {
  const found = new Map<string, Vessel & { readonly looks: Problem[] }>();
  const scale = table.scale("water");
  for (const reader of table.rows) {
    const vessel = reader.text("vessel");
    if (vessel === "") continue;
    const first = found.get(sameName(vessel));
    if (first) {
      first.looks.push(reader.warning("vessel", `${vessel} stands twice; the first row is taken`));
      continue;
    }
    const [water, typed] = [reader.number("water"), reader.number("factor")];
    const factor = typed === undefined ? undefined : reader.check("factor", () => waxFactor("factor", typed));
    const looks: Problem[] = [];
    if (factor !== undefined && !isWaxFactor(factor)) {
      looks.push(reader.warning("factor", `${vessel} has the wax factor ${plain(factor)}; most waxes are near 0.86`));
    }
    addAll(looks, unitDoubts(table));
    const weighed = scale.ratio !== undefined && water !== undefined && water > 0 ? water * scale.ratio : undefined;
    // A wick that cannot be read spoils no weight.
    const wick = reader.errorCode("wick") === "" ? wickIn(reader.text("wick")) : "";
    if (reader.errorCode("wick") !== "")
      looks.push(reader.warning("wick", `${vessel}: the cell of its wick shows ${reader.errorCode("wick")}`));
    const wrong = reader.problems;
    found.set(sameName(vessel), { row: reader.row, vessel, water: weighed, factor, wick, wrong, looks });
  }
  return found;
}

/** A wick in a cell; empty for words that say that there is none yet. */
export const wickIn = (text: string): string => (/^(none|no wick|n\/?a|tbd|tba|\?|[-–—]+)$/i.test(text) ? "" : text);

/** What is doubtful in the heading of the water weights: said with each vessel that is used. */
function unitDoubts(table: TableReader<keyof typeof FIELDS>): Problem[] {
  const unit = table.unitOf("water");
  const says = "The heading of the water weight says";
  if (unit && "other" in unit) {
    const text = `${says} ${unit.words}, ${unit.other} and not a weight: no factor is learnt by it`;
    return [table.problem("warning", "water", text)];
  }
  if (unit && "unknown" in unit) {
    const text = `${says} ${unit.unknown}, which is no unit known here; its numbers are taken in the unit of the settings`;
    return [table.problem("warning", "water", text)];
  }
  return [];
}

function starter(unit: WeightUnit): Starter {
  const water = `Water weight (${unit})`;
  const formula = `=POUR.FILLWEIGHT(Vessels[[#This Row],[${water}]],Vessels[[#This Row],[Wax factor]])`;
  return {
    note: "Weigh the water each vessel holds to its fill line. A blank wax factor is taken as 0.86 until your own test pour shows a better one.",
    columns: [
      { heading: "Vessel", width: 24 },
      { heading: water, ...weightLook(unit) },
      { heading: "Wax factor", width: 12, format: "0.000" },
      { heading: fillHeading(unit), ...weightLook(unit), formula },
      { heading: "Wick", width: 14 },
    ],
  };
}
