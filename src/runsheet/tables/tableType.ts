import type { ColumnWithChoices } from "../../sheet/columnChoices";
import type { Problem, Severity } from "../problem";
import type { WeightUnit } from "../settings";
import type { Field } from "./headings/field";
import type { Question } from "./questions";
import type { TableReader } from "./tableReader";

/** A type of table that the run sheet can read: one file holds all that is particular to it. */
export interface TableType<F extends string = string, R = unknown> {
  /** In front of a person. A table that bears it is found by it. */
  readonly name: string;
  /** What the table is called where its name holds a space. */
  readonly table?: string;
  /** What it is for, for the help page. */
  readonly purpose: string;
  /** What it gives, in a few words, for the pane. */
  readonly gives?: string;
  /** Whether it is another type under a name of before: read where it is there, and not offered. */
  readonly isFormer?: true;
  readonly fields: Readonly<Record<F, Field>>;
  /** Groups of fields: of each group one must have a column. */
  readonly needs: readonly (readonly F[])[];
  /** A field that may do without a column while there is a table of that type. */
  readonly standIn?: { readonly field: F; readonly type: string };
  /** How bad it is when it lacks a column and is not read. */
  readonly unusable: Severity;
  /** What is asked about columns that nobody reads, the first that fits. */
  readonly asks: readonly Question[];
  /** Whether these headings can be of no other table: then it is found by them too. */
  isKnownBy?(headings: readonly string[]): boolean;
  /** The table that a new workbook begins with. `present` gives the headings of a table that is there already. */
  starter(
    unit: WeightUnit,
    present: (name: string) => Present | undefined,
    /** What the other tables name that is bought. */
    known: readonly KnownItem[],
  ): Starter;
  /** Its rows, typed, all weights in the unit of the reader. */
  read(table: TableReader<F>): R;
  /** Why no row of it can be read; where any is an error, none is. */
  refuses?(table: TableReader<F>): Problem[];
  /** What is doubtful in it as a whole. */
  doubts?(table: TableReader<F>): Problem[];
}

export interface Starter {
  /** Where the table is called otherwise than its type. */
  readonly name?: string;
  readonly note: string;
  readonly columns: readonly StarterColumn[];
  /** Rows that are filled already, by column. */
  readonly rows?: readonly (readonly string[])[];
}

/** Something that is bought, and of what kind it is. */
export interface KnownItem {
  readonly item: string;
  readonly kind: string;
}

export interface StarterColumn extends ColumnWithChoices {
  readonly width?: number;
  readonly format?: string;
  readonly formula?: string;
}

/** A table that is in the workbook already. */
export interface Present {
  readonly name: string;
  readonly headings: readonly string[];
}

/** Holds a type to its own fields. */
export const tableType = <F extends string, R>(type: TableType<F, R>): TableType<F, R> => type;
