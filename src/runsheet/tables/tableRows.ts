import type { CellValue } from "../../sheet/sheet";
import type { Columns, TableTypeId } from "./registry";

/** Rows of a table and the columns that were matched or chosen. */
export interface TableRows<K extends TableTypeId = TableTypeId> {
  readonly type: K;
  readonly headings: readonly string[];
  readonly rows: readonly (readonly CellValue[])[];
  readonly columns: Columns<K>;
  /** Headings the maker said to leave out: they are not asked about. */
  readonly leftOut?: readonly string[];
  /** Rows that are not shown, from 0. */
  readonly hidden?: readonly number[] | undefined;
  /** Rows right below it that are no part of it, and whether the maker said to leave them out. */
  readonly below?: { readonly rows: number; readonly isLeftOut: boolean } | undefined;
}

/** The tables a run is built from; only the one poured from must be there. */
export type Tables = { readonly pour: TableRows<"pour"> } & {
  readonly [K in Exclude<TableTypeId, "pour">]?: TableRows<K> | undefined;
};
