import type { Content, Sheet } from "./sheet";

/** Rows for a table that is there: each content under the heading of its place in `headings`. */
export interface NewRows {
  readonly table: string;
  readonly headings: readonly string[];
  readonly rows: readonly (readonly (Content | null)[])[];
}

/** Rows for a table that is there, each table once; or a sheet with a new one. */
export type Addition = NewRows | Sheet;
