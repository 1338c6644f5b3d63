import { lengthUnitOf, unitKindOf, weightUnitOf } from "../core/units/spellings";
import { gramsIn } from "../core/units/weight";
import type { KindName, Role } from "./kinds";
import type { WeightUnit } from "./settings";
import { headingOf, type Problem, type TableRows } from "./tableReader";
import { bareHeading, tidyHeading } from "./tidyHeading";

/** The unit that a heading names: a weight, or something that is no weight, or words that are not known. */
export type HeadingUnit =
  | { readonly weight: WeightUnit }
  | { readonly other: "a volume" | "a length" | "several units at once"; readonly words: string }
  | { readonly unknown: string };

/**
 * The unit in a heading's brackets, behind its `per`, or as its last word: `Fill (g)`, `Price per kg (EUR)`,
 * `On_hand_kg`. Undefined when it names none.
 */
export function headingUnit(heading: string): HeadingUnit | undefined {
  const bracketed = [...tidyHeading(heading).matchAll(/\((.*?)\)/g)].map(([, words]) => (words as string).trim());
  // The unit of `Water fl oz` is two words.
  const ending = / ((?:(?:per|fl|fluid|\d[\d.,]*)\.? )*\S+)$/i.exec(bareHeading(heading))?.[1] ?? "";
  const named = [...bracketed, ending].map(unitOf);
  return (
    named.find((unit) => unit && "other" in unit) ??
    named.find((unit) => unit && "weight" in unit) ??
    // The last word of a heading is a word like any other; what stands in brackets is meant as something.
    named.slice(0, bracketed.length).find((unit) => unit !== undefined)
  );
}

function unitOf(words: string): HeadingUnit | undefined {
  const parts = words
    .toLowerCase()
    .split(/[^\p{L}\d.]+/u)
    .map((part) => part.replace(/\.$/, ""))
    .filter((part) => part !== "");
  if (parts.length === 0) return undefined;
  if (parts.some((part) => /^fl(uid)?$/.test(part) || unitKindOf(part) === "volume"))
    return { other: "a volume", words };
  if (parts.every((part) => lengthUnitOf(part))) return { other: "a length", words };
  // `EUR/kg`, `g or pieces`: one of the words is the unit.
  const weight = parts.map(weightUnitOf).find((unit) => unit !== undefined);
  if (weight === undefined) return { unknown: words };
  return parts.some((part) => /^\d/.test(part) && part !== "1")
    ? { other: "several units at once", words }
    : { weight };
}

/** How many of the unit `to` one of a heading's unit is; 1 where it names no weight. */
export function weightRatio(unit: HeadingUnit | undefined, to: WeightUnit): number {
  if (!unit || !("weight" in unit) || unit.weight === to) return 1;
  return gramsIn("unit", unit.weight) / gramsIn("unit", to);
}

const NO_WEIGHT = {
  "a volume": "a volume and not a weight; weigh it, or use POUR.FILLBYVOLUME",
  "a length": "a length and not a weight; choose another column",
  "several units at once": "several units at once; write it for one",
} as const;

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
