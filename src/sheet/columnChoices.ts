import type { Choices, Table } from "./sheet";

/** A column as it is described before its table is. */
export interface ColumnWithChoices {
  readonly heading: string;
  /** The table and its column that know what may stand here. */
  readonly choices?: readonly [table: string, column: string];
  /** The words that may stand here. */
  readonly among?: readonly string[];
}

/** The choices of a table with these columns, where they have any. */
export function choicesOf(columns: readonly ColumnWithChoices[]): Pick<Table, "choices"> {
  const choices = columns.flatMap(({ heading, choices, among }): Choices[] => {
    if (among) return [{ heading, among }];
    return choices ? [{ heading, from: choices[0], column: choices[1] }] : [];
  });
  return choices.length > 0 ? { choices } : {};
}
