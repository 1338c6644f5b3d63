import { BATCH } from "./batch";
import { BURN_TESTS } from "./burnTests";
import { COMPONENTS } from "./components";
import { type ColumnsOf, columnsFor } from "./headings/matching";
import { ITEMS } from "./items";
import { MOVES } from "./moves";
import { PRICES } from "./prices";
import { READINGS } from "./readings";
import { RECIPES } from "./recipes";
import { RUNS_LOG } from "./runsLog";
import { SCENTS } from "./scents";
import { STOCK } from "./stock";
import type { TableType } from "./tableType";
import { VESSELS } from "./vessels";

/** All types of table, in the order in which they are offered. Choices in workbooks are kept by these ids. */
export const TABLE_TYPES = {
  pour: BATCH,
  vessels: VESSELS,
  scents: SCENTS,
  recipes: RECIPES,
  items: ITEMS,
  components: COMPONENTS,
  moves: MOVES,
  log: RUNS_LOG,
  burnTests: BURN_TESTS,
  readings: READINGS,
  stock: STOCK,
  prices: PRICES,
} as const satisfies Readonly<Record<string, TableType>>;

export type TableTypeId = keyof typeof TABLE_TYPES;
export const TABLE_TYPE_IDS = Object.keys(TABLE_TYPES) as TableTypeId[];

/** All but the table poured from: they add to a run sheet and need not be there. */
export type FurtherTypeId = Exclude<TableTypeId, "pour">;
export const FURTHER_TYPE_IDS = TABLE_TYPE_IDS.filter((id): id is FurtherTypeId => id !== "pour");

/** Whether it is another type under a name of before: read where it is there, and not offered. */
export const isFormer = (id: TableTypeId): boolean => (TABLE_TYPES[id] as TableType).isFormer === true;

export type FieldOf<K extends TableTypeId> = K extends TableTypeId
  ? keyof (typeof TABLE_TYPES)[K]["fields"] & string
  : never;
export type FieldId = FieldOf<TableTypeId>;

/** What reading a table of a type gives. */
export type RowsOf<K extends TableTypeId> = ReturnType<(typeof TABLE_TYPES)[K]["read"]>;

export type Columns<K extends TableTypeId = TableTypeId> = ColumnsOf<FieldOf<K>>;

export const fieldsOf = <K extends TableTypeId>(id: K): FieldOf<K>[] =>
  Object.keys(TABLE_TYPES[id].fields) as FieldOf<K>[];

/** What a table of a type is called in the workbook, where names hold no spaces. */
export const tableName = (id: TableTypeId): string => (TABLE_TYPES[id] as TableType).table ?? TABLE_TYPES[id].name;

/** What a field is called in front of a person. */
export const fieldName = (id: TableTypeId, field: string): string =>
  (TABLE_TYPES[id] as TableType).fields[field]?.name ?? field;

/** The columns of a table by its headings. */
export const matchColumns = <K extends TableTypeId>(id: K, headings: readonly string[]): Columns<K> =>
  columnsFor((TABLE_TYPES[id] as TableType).fields, headings) as Columns<K>;

/** The groups of fields a table of this type cannot do without that have no column. */
export function missingFields<K extends TableTypeId>(id: K, columns: Columns<K>): FieldOf<K>[][] {
  const { needs } = TABLE_TYPES[id] as TableType;
  const has = columns as Readonly<Record<string, number | undefined>>;
  return needs.filter((group) => group.every((field) => has[field] === undefined)) as FieldOf<K>[][];
}
