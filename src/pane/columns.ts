import type { Problem } from "../runsheet/problem";
import { columnNames } from "../runsheet/tables/headings/columnNames";
import { fieldName, matchColumns, TABLE_TYPES, type TableTypeId } from "../runsheet/tables/registry";
import type { Kept } from "./state/kept";
import { TABLES } from "./words/tables";

type ByHand = Kept["columns"];

/** By what choices are kept for a table: the same table may serve as several kinds. */
export const keyOf = (kind: TableTypeId, table: string): string => `${kind} ${table}`;

/** The column of each role: the one chosen by hand while it is there, else the one that the headings say. */
export function columnsOf(
  kind: TableTypeId,
  table: { readonly name: string; readonly headings: readonly string[] },
  byHand: ByHand,
): { columns: Readonly<Record<string, number>>; lost: Problem[] } {
  const names = columnNames(table.headings);
  const columns: Record<string, number> = {};
  const none: string[] = [];
  const lost: Problem[] = [];
  for (const [role, heading] of Object.entries(byHand[keyOf(kind, table.name)] ?? {})) {
    if (!Object.hasOwn(TABLE_TYPES[kind].fields, role)) continue;
    if (heading === null) none.push(role);
    else if (names.includes(heading)) columns[role] = names.indexOf(heading);
    else {
      lost.push({ table: kind, severity: "warning", text: TABLES.columnGone(fieldName(kind, role), heading) });
    }
  }
  // The other roles are matched among the columns that are left.
  const taken = Object.values(columns);
  const matched = matchColumns(
    kind,
    table.headings.map((heading, i) => (taken.includes(i) ? "" : heading)),
  );
  for (const [role, column] of Object.entries(matched)) {
    if (!none.includes(role)) columns[role] ??= column;
  }
  return { columns, lost };
}

/** The choices with one more: a role's column by its name, or null for none. */
export function choosing(
  byHand: ByHand,
  kind: TableTypeId,
  table: string,
  role: string,
  column: string | null,
): ByHand {
  const key = keyOf(kind, table);
  return { ...byHand, [key]: { ...byHand[key], [role]: column } };
}

/** The columns left out with one more of a table. */
export function leavingOut(
  leftOut: Kept["leftOut"],
  kind: TableTypeId,
  table: string,
  heading: string,
): Kept["leftOut"] {
  const key = keyOf(kind, table);
  return { ...leftOut, [key]: [...(leftOut[key] ?? []), heading] };
}
