import type { FieldId, TableTypeId } from "./tables/registry";

/** An error is to be fixed before a sheet is written; a warning is to be looked at before pouring. */
export type Severity = "error" | "warning";

/** Something to fix or to look at, with the place it speaks of. */
export interface Problem {
  /** The type of the table it is in; the one poured from when left out. */
  readonly table?: TableTypeId;
  /** The row below the heading, from 0. */
  readonly row?: number;
  readonly field?: FieldId;
  readonly severity: Severity;
  readonly text: string;
  /** The heading of a column that nobody reads, where the problem asks about it. */
  readonly unread?: string;
  /** Whether someone may be hurt: it stands before all others and is never cut. */
  readonly safety?: true;
  /** How many rows stand right below the table that this speaks of, to be taken in or left out. */
  readonly below?: number;
}

export const isError = ({ severity }: Pick<Problem, "severity">): boolean => severity === "error";

/** The same, only to be looked at. */
export const asWarning = (problem: Problem): Problem => ({ ...problem, severity: "warning" });
