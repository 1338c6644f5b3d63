import type { SourceRows } from "../host/host";
import type { Problem } from "../runsheet/problem";
import type { WeightUnit } from "../runsheet/settings";
import type { FittingTables } from "../runsheet/tables/fittings";
import { readTable } from "../runsheet/tables/readTables";
import { TABLE_TYPE_IDS, type TableTypeId } from "../runsheet/tables/registry";
import { type Log, NO_LOG } from "../runsheet/tables/runsLog";
import type { Tables } from "../runsheet/tables/tableRows";
import type { Vessels } from "../runsheet/tables/vessels";
import { columnsOf, keyOf } from "./columns";
import type { Kept } from "./state/kept";
import type { ReadTables } from "./state/useTables";

/** How many rows below each table the maker said to leave out; asked again when there are more. */
export type RowsLeft = ReadonlyMap<string, number>;

/** By what it is remembered how many rows below a table were left out. */
export const keyOfRows = ({ name, place }: SourceRows): string => JSON.stringify([name, name === "" ? place : ""]);

/** What of the settings is about tables: columns chosen by hand, and those that stay unread. */
export type ByHand = Pick<Kept, "columns" | "leftOut">;

/** The tables that a run is built from. */
export interface GivenTables {
  /** As they stand in the workbook. */
  readonly read: ReadTables;
  readonly tables: Tables;
  /** Columns chosen by hand that are gone. */
  readonly lost: readonly Problem[];
  /** What goes with the vessels of open runs, where the tables to plan by are made up. */
  readonly openFittings?: FittingTables;
}

/** The tables as a run is built from them; undefined with none to pour from. */
export function givenTables(read: ReadTables, byHand: ByHand, rowsLeft: RowsLeft): GivenTables | undefined {
  const tables = Object.fromEntries(TABLE_TYPE_IDS.map((kind) => [kind, tableOf(kind, read, byHand, rowsLeft)]));
  if (!tables.pour) return undefined;
  const lost = TABLE_TYPE_IDS.flatMap((kind) => {
    const source = read[kind];
    return source ? columnsOf(kind, source, byHand.columns).lost : [];
  });
  return { read, tables: tables as unknown as Tables, lost };
}

/** A table as the run sheet reads it, with what was chosen and decided by hand. */
export function tableOf<K extends TableTypeId>(
  kind: K,
  read: ReadTables,
  byHand: ByHand,
  rowsLeft: RowsLeft = new Map(),
): Tables[K] | undefined {
  const source = read[kind];
  if (!source) return undefined;
  const { headings, rows, hidden, below = 0 } = source;
  const { columns } = columnsOf(kind, source, byHand.columns);
  const leftOut = byHand.leftOut[keyOf(kind, source.name)];
  const isLeftOut = rowsLeft.get(keyOfRows(source)) === below;
  return {
    type: kind,
    headings,
    rows,
    hidden,
    columns,
    leftOut,
    below: { rows: below, isLeftOut },
  } as unknown as Tables[K];
}

/** The runs log; an empty one where there is none. Each of its rows says its unit itself. */
export const logOn = (read: ReadTables, byHand: ByHand): Log => readTable(tableOf("log", read, byHand), "g") ?? NO_LOG;

/** The vessels by name, their water in this unit; none while the settings are not read. */
export const vesselsOf = (read: ReadTables, byHand: ByHand | undefined, unit: WeightUnit | undefined): Vessels =>
  (byHand && unit && readTable(tableOf("vessels", read, byHand), unit)) ?? new Map();
