/** What the formulas of described sheets are known to give, from a workbook file that was saved with it. */

export interface KnownValue {
  /** From 0. */
  readonly row: number;
  /** From 0. */
  readonly column: number;
  readonly value: string | number | boolean;
  /** Of a formula that fills more cells than its own. */
  readonly fills?: { readonly rows: number; readonly columns: number };
}

/** By the names of the sheets: of each formula, and of each cell that one fills. */
export type KnownValues = Readonly<Record<string, readonly KnownValue[]>>;
