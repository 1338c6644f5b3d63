import type { Problem } from "../problem";
import type { HeadingBasis } from "./headings/headingBasis";
import { RowReader } from "./rowReader";
import type { TableReader } from "./tableReader";

/** What a cell says. What is wrong with it comes along, and matters only where the cell does. */
export interface Entry<T> {
  /** Undefined where the cell is blank or wrong. */
  readonly value: T | undefined;
  readonly isBlank: boolean;
  readonly wrong: readonly Problem[];
  /** The code of the error that the cell shows, such as `#N/A`; empty when it shows none. */
  readonly errorCode: string;
}

/** Reads a cell by itself. */
export function entryOf<F extends string, T>(
  table: TableReader<F>,
  row: number,
  field: F,
  read: (row: RowReader<F>) => T | undefined,
): Entry<T> {
  const reader = new RowReader(table, row);
  const value = read(reader);
  return { value, isBlank: reader.isBlank(field), wrong: reader.problems, errorCode: reader.errorCode(field) };
}

/** A basis that a heading names, or that it names something else. */
export interface SaidBasis {
  readonly basis: HeadingBasis;
  /** `The heading Load of total says of total`. */
  readonly says: string;
}
