import { list } from "../../core/check/list";
import { unitKindOf, weightUnitOf } from "../../core/units/spellings";
import type { WeightUnit } from "../settings";
import type { Field } from "./headings/field";
import { VESSEL_WORDS } from "./headings/headingWords";
import { bareHeading } from "./headings/tidyHeading";
import type { Question, UnreadColumn } from "./questions";
import { wantedIn } from "./wanted";

/**
 * Asked of every type: a column whose cells name the units of the numbers beside them. Units stand in headings here,
 * so nothing is taken while a row says another one than it is read in.
 */
export function otherUnitsOf(fields: Readonly<Record<string, Field>>, unit: WeightUnit): Question {
  return {
    isAsked: (column) => strangeIn(column, weighedBy(fields, column, unit)).length > 0,
    text: (column) => textOf(column, weighedBy(fields, column, unit)),
    isOfAny: true,
    stops: true,
  };
}

/** A column of weights, and the unit that it is read in. */
interface Weighed {
  readonly heading: string;
  readonly unit: string;
}

/** The columns of weights that are read. What a heading says that is no weight is spoken of with it. */
function weighedBy(
  fields: Readonly<Record<string, Field>>,
  { columnOf }: UnreadColumn,
  unit: WeightUnit,
): readonly Weighed[] {
  return Object.entries(fields).flatMap(([field, { reads }]) => {
    const heading = columnOf(field);
    if (heading === undefined || (reads !== "weight" && reads !== "amount")) return [];
    const wanted = wantedIn(reads, heading, unit);
    return wanted.unit === "" ? [] : [{ heading, unit: wanted.unit }];
  });
}

const HEADING = /(^|\s)(units?|u\/?m|u\.?o\.?m\.?|(units? of )?measure(ment)?s?)$/i;
/** What is said of a number that counts. */
const PIECES = new RegExp(
  `^(pcs?|pieces?|ea|each|units?|items?|candles?|count|ct|nos?|number|(${VESSEL_WORDS.join("|")})(s|es)?)\\.?$`,
  "i",
);
const BLANK = /^([-–—.?]*|n\/?a|none|[\d.,]+)$/i;

/** The units in the cells that are not those of the weights beside them; none where it is no column of units. */
function strangeIn({ heading, texts, isNumeric }: UnreadColumn, weighed: readonly Weighed[]): string[] {
  const named = texts.filter((text) => !BLANK.test(text));
  const isCalledSo = HEADING.test(bareHeading(heading));
  // Of other columns one letter may be a size or a mark: M, L, C.
  const isUnits = named.some(isPlainUnit) && named.every((text) => PIECES.test(text) || unitKindOf(text));
  if (!isCalledSo && (isNumeric || !isUnits)) return [];
  return named.filter((text) => !PIECES.test(text) && !isReadIn(text, weighed));
}

const isPlainUnit = (text: string): boolean =>
  unitKindOf(text) === "weight" || (unitKindOf(text) === "volume" && text.length > 1);

const isReadIn = (text: string, weighed: readonly Weighed[]): boolean => {
  const unit = weightUnitOf(text);
  return unit !== undefined && weighed.length > 0 && weighed.every((one) => one.unit === unit);
};

function textOf(column: UnreadColumn, weighed: readonly Weighed[]): string {
  const strange = strangeIn(column, weighed);
  const names = [...new Set(strange.map((text) => weightUnitOf(text) ?? text.slice(0, 20)))];
  const shown = names.length > 4 ? [...names.slice(0, 3), "others"] : names;
  const read = [...new Set(weighed.map(({ unit }) => unit))];
  const taken = read.length > 0 ? `taken as ${list(read, "and")}` : "taken as they stand";
  const ofWeights = column.texts.flatMap((text) => weightUnitOf(text) ?? []);
  const [only] = new Set(names.length === 1 ? ofWeights : []);
  const other = weighed.find(({ unit }) => unit !== only) ?? weighed[0];
  const isAlike = only !== undefined && ofWeights.every((unit) => unit === only);
  const sample = other ? `, such as "${bareHeading(other.heading)} (${isAlike ? only : other.unit})"` : "";
  const volume = strange.some((text) => unitKindOf(text) === "volume") ? "Weigh what is a volume, give" : "Give";
  const convert = isAlike ? "Write it" : `${volume} all numbers of a column one unit and write it`;
  return `is not read: it says ${list(shown, "and")}, and the numbers are ${taken}. ${convert} in brackets in their heading${sample}; then leave this column out`;
}
