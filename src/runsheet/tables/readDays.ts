import { wrong } from "../../core/check/wrong";
import type { RowReader } from "./rowReader";

/** A number of whole days in a cell, at most ten years; undefined when it is blank, or wrong and noted. */
export function daysIn<F extends string>(reader: RowReader<F>, field: F): number | undefined {
  const days = reader.number(field);
  if (days === undefined) return undefined;
  return reader.check(field, () => {
    if (Number.isInteger(days) && days >= 0 && days <= 3650) return days;
    throw wrong(field, `${days} is no number of days; write whole days`);
  });
}
