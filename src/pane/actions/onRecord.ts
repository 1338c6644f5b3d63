import { isError } from "../../runsheet/problem";
import type { LogTable } from "../../runsheet/record/logAddition";
import type { MovesTable } from "../../runsheet/record/moveRows";
import type { WeightUnit } from "../../runsheet/settings";
import type { Components } from "../../runsheet/tables/components";
import type { Items } from "../../runsheet/tables/items";
import type { Moves } from "../../runsheet/tables/moves";
import { readTable } from "../../runsheet/tables/readTables";
import { fieldName, missingFields } from "../../runsheet/tables/registry";
import type { Log } from "../../runsheet/tables/runsLog";
import type { Vessels } from "../../runsheet/tables/vessels";
import { type ByHand, logOn, tableOf, vesselsOf } from "../givenTables";
import { itemsOn } from "../receiving/itemsOn";
import type { ReadTables } from "../state/useTables";
import { LOGGING } from "../words/logging";
import type { Book } from "./book";

/** What is on record in the workbook, weights in the unit of a run. */
export interface OnRecord {
  /** The log as it stands; undefined where there is none yet. */
  readonly logTable: LogTable | undefined;
  readonly log: Log;
  readonly vessels: Vessels;
  readonly components: Components;
  readonly items: Items;
  /** Undefined where there is no table of moves. */
  readonly moves: { readonly read: Moves; readonly table: MovesTable } | undefined;
}

/** Reads the tables anew: what is added must fit what stands there now. */
export async function readRecord({ refresh, kept }: Book, unit: WeightUnit): Promise<OnRecord> {
  if (!kept) throw new Error(LOGGING.settingsUnread);
  return recordIn(await refresh(), kept, unit);
}

export function recordIn(read: ReadTables, kept: ByHand, unit: WeightUnit): OnRecord {
  const logTable = tableOf("log", read, kept);
  return {
    logTable: logTable && { ...logTable, name: read.log?.name ?? "" },
    log: logOn(read, kept),
    vessels: vesselsOf(read, kept, unit),
    components: readTable(tableOf("components", read, kept), unit) ?? new Map(),
    items: itemsOn(read, kept, unit),
    moves: movesOn(read, kept, unit),
  };
}

/** The table of moves, its weights in this unit; refuses one that rows cannot be added to. */
export function movesOn(tables: ReadTables, byHand: ByHand, unit: WeightUnit): OnRecord["moves"] {
  const found = tableOf("moves", tables, byHand);
  if (!found) return undefined;
  const table = { ...found, name: tables.moves?.name ?? "" };
  const missing = missingFields("moves", table.columns).map(([field]) => fieldName("moves", field ?? ""));
  if (missing.length > 0) throw new Error(LOGGING.noMovesColumns(table.name, missing.join(", ")));
  const read = readTable(table, unit) as Moves;
  const wrong = read.saidOfAll.weight.find(isError);
  if (wrong) throw new Error(LOGGING.movesUnit(table.name, wrong.text));
  return { read, table };
}
