import { atLeastZero } from "../../core/check/atLeastZero";
import { millimetresIn } from "../../core/units/length";
import { lengthUnitOf, unitsInWords } from "../../core/units/spellings";
import type { RowReader } from "./rowReader";
import type { TableReader } from "./tableReader";

/** A length in a cell, in mm, by the unit that its heading names; undefined when it is blank, or wrong and noted. */
export function lengthIn<F extends string>(table: TableReader<F>, reader: RowReader<F>, field: F): number | undefined {
  const value = reader.number(field);
  if (value === undefined) return undefined;
  const ratio = millimetresOf(table.heading(field));
  if (ratio !== undefined) return reader.check(field, () => atLeastZero(field, value) * ratio);
  reader.error(
    field,
    `the heading ${table.heading(field)} names no unit of length; write ${unitsInWords("length")} in its brackets`,
  );
  return undefined;
}

/** How many mm one of the unit in a heading is; undefined where it names none. */
export function millimetresOf(heading: string): number | undefined {
  const unit = lengthUnitIn(heading);
  return unit && millimetresIn("unit", unit);
}

/** The unit of length in a heading, in brackets or as its last word: `Flame (mm)`, `Pool in cm`. */
export const lengthUnitIn = (heading: string) =>
  heading
    .split(/[\s()[\]{},;:/_-]+/)
    .filter((word) => word !== "")
    .reverse()
    .flatMap((word, i) => (i > 0 && /^in$/i.test(word) ? [] : (lengthUnitOf(word) ?? [])))[0];
