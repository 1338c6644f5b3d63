/** The words of the choice of tables and their columns. */

import { FURTHER_TYPE_IDS, isFormer, TABLE_TYPES } from "../../runsheet/tables/registry";

export const TABLES = {
  heading: "Table",
  selection: "Use the selected cells",
  more: (found: readonly string[]) => `More tables: ${found.join(", ") || "none"}`,
  moreHint: `Found by these names, or choose one. ${FURTHER_TYPE_IDS.filter((id) => !isFormer(id))
    .map((id) => TABLE_TYPES[id].gives)
    .join(" ")}`,
  choose: "choose a table",
  none: "no table",
  selectedOn: (sheet: string) => `Selected cells on ${sheet}`,
  addEmpty: (type: string) => `Add a table called ${type}`,
  columns: (found: number, all: number) => `Columns: ${found} of ${all} found by their headings`,
  noColumn: "no column",
  leftOut: (headings: readonly string[]) => `Left out: ${headings.join(", ")}`,
  askAgain: "Ask about them again",
  selectionTaken: "The first row that is selected is read as headings.",
  gone: (table: string) => `The table ${table} is not there any more. Choose the one to pour from.`,
  columnGone: (field: string, heading: string) =>
    `${field}: the column "${heading}" that was chosen is gone; check the columns`,
} as const;
