import { isError, type Problem } from "../problem";
import type { WeightUnit } from "../settings";
import { fieldName, missingFields, type RowsOf, TABLE_TYPE_IDS, TABLE_TYPES, type TableTypeId } from "./registry";
import { TableReader } from "./tableReader";
import type { TableRows, Tables } from "./tableRows";
import type { TableType } from "./tableType";
import { type AskedColumn, unreadColumns } from "./unreadColumns";

/** All that planning knows of the tables. */
export interface ReadTables {
  /** What the tables hold. One that is not there, or cannot be read, holds nothing. */
  readonly rows: { readonly [K in TableTypeId]?: RowsOf<K> | undefined };
  /** What keeps tables from being read, and rows that stand outside of them. */
  readonly problems: readonly Problem[];
  /** What is doubtful in tables all the same. */
  readonly doubts: readonly Problem[];
  /** Columns that nobody reads and that look needed. */
  readonly asked: readonly AskedColumn[];
}

/** The door: reads all tables, each once. Behind it there are rows, and no headings, columns or other units. */
export function readTables(tables: Tables, unit: WeightUnit): ReadTables {
  const given = TABLE_TYPE_IDS.flatMap((id) => (tables[id] ? [tables[id] as TableRows] : []));
  const lacking = given.map((table) => ({ table, missing: missingIn(table, tables) }));
  // What can be said of the table poured from is said also while it lacks a column.
  const complete = lacking.flatMap(({ table, missing }) =>
    missing.length === 0 || table.type === "pour" ? [{ table, reader: readerOf(table, unit) }] : [],
  );
  const problems = [
    ...lacking.flatMap(({ table, missing }) => missingProblems(table.type, missing)),
    ...given.flatMap(rowsBelow),
    ...complete.flatMap(({ table, reader }) => typeOf(table).refuses?.(reader) ?? []),
  ];
  // Nothing is poured by tables that lack columns or are in another unit: every figure would be wrong.
  const isBarred = problems.some((problem) => isError(problem) && problem.below === undefined);
  const read = complete.filter(({ table }) => table.type !== "pour" || !isBarred);
  return {
    rows: Object.fromEntries(read.map(({ table, reader }) => [table.type, typeOf(table).read(reader)])),
    problems,
    doubts: complete.flatMap(({ table, reader }) => typeOf(table).doubts?.(reader) ?? []),
    asked: complete.flatMap(({ table }) => unreadColumns(typeOf(table), table, unit)),
  };
}

/** The rows of one table; undefined where there is none. */
export function readTable<K extends TableTypeId>(
  table: TableRows<K> | undefined,
  unit: WeightUnit,
): RowsOf<K> | undefined {
  return table && (typeOf(table).read(readerOf(table, unit)) as RowsOf<K>);
}

const typeOf = ({ type }: TableRows): TableType => TABLE_TYPES[type];
const readerOf = (table: TableRows, unit: WeightUnit) =>
  new TableReader<string>(table.type, typeOf(table).fields, table, unit);

/** The groups of fields that have no column and need one. */
function missingIn({ type, columns }: TableRows, tables: Tables): string[][] {
  const { standIn } = TABLE_TYPES[type] as TableType;
  const other = standIn && tables[standIn.type as TableTypeId];
  const isStoodIn = other !== undefined && missingFields(other.type, other.columns).length === 0;
  const missing: string[][] = missingFields(type, columns);
  return missing.filter((group) => !(isStoodIn && group.includes(standIn?.field ?? "")));
}

function missingProblems(table: TableTypeId, missing: readonly (readonly string[])[]): Problem[] {
  if (missing.length === 0) return [];
  const { name, unusable, standIn } = TABLE_TYPES[table] as TableType;
  const groups = missing.map((group) => group.map((field) => fieldName(table, field)).join(" or "));
  if (table !== "pour") {
    const text = `${name} is not read: no column for ${groups.join(", ")}. Fix the heading, or choose the column or no table under More tables`;
    return [{ table, severity: unusable, text }];
  }
  return missing.map((group, i) => {
    const isStandIn = standIn !== undefined && group.includes(standIn.field);
    const more = isStandIn
      ? `, and no table of ${TABLE_TYPES[standIn.type as TableTypeId].name} under More tables`
      : "";
    const text = `${groups[i]}: no column is chosen${more}`;
    return { table, field: group[0] as NonNullable<Problem["field"]>, severity: unusable, text };
  });
}

/** Rows right below a table, which it does not take in by itself: nothing is written until the maker has decided. */
function rowsBelow({ type, rows, below }: TableRows): Problem[] {
  if (!below || below.rows === 0) return [];
  const place = { table: type, row: rows.length, below: below.rows };
  const count = `${below.rows} ${below.rows === 1 ? "row" : "rows"}`;
  return below.isLeftOut
    ? [{ ...place, severity: "warning", text: `${count} below the table left out` }]
    : [
        {
          ...place,
          severity: "error",
          text: `${count} right below the table, no part of it: to be taken in or left out`,
        },
      ];
}
