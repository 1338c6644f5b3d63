import type { WeightUnit } from "../../../src/runsheet/settings";
import { type Ledger, ledgerOf, remembered } from "../../../src/runsheet/stock/ledger";
import type { Moves } from "../../../src/runsheet/tables/moves";
import { readTable } from "../../../src/runsheet/tables/readTables";
import { matchColumns } from "../../../src/runsheet/tables/registry";
import type { CellValue } from "../../../src/sheet/sheet";

/** 2026-11-26, as spreadsheets count days. */
export const DAY = 46352;

const columnsOf = remembered((unit) => {
  const headings = ["Date", "Item", "Lot", `Change (${unit})`, "Paid", "Best before", "Run", "Note"];
  return { headings, columns: matchColumns("moves", headings) };
});

/** Moves as they are read from a table: date, item, lot, change, and then paid, best before, run, note. */
export function movesOf(rows: readonly (readonly CellValue[])[], unit: WeightUnit = "g", tableUnit = "g"): Moves {
  const moves = readTable({ type: "moves", rows, ...columnsOf(tableUnit) }, unit);
  if (!moves) throw new Error("no moves");
  return moves;
}

export const ledgerFrom = (...args: Parameters<typeof movesOf>): Ledger => ledgerOf(movesOf(...args));
