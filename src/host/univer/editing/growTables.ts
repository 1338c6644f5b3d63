/** Tables take in what is typed or pasted right below them or right of their headings, as in other spreadsheets. */

import {
  type Injector,
  IUniverInstanceService,
  UniverInstanceType,
  type Workbook,
  type Worksheet,
} from "@univerjs/core";
import { SetSheetTableMutation, TableManager } from "@univerjs/preset-sheets-table";
import { headingText, reader } from "../../../engine/cells";
import { hasTotals, isTotalsRow } from "../placedTables";
import { areTotals } from "../totals";
import type { Rows } from "./columnFormulas";
import { type Consequence, cellsOf, type Edit, isFilled, joined, sheetsOf } from "./edits";
import { followGrowth } from "./followGrowth";
import { filledRows, inserted, written } from "./newRows";

type Table = ReturnType<TableManager["getTablesBySubunitId"]>[number];

/** What an edit wrote into the cells of a sheet, and what stood there before. */
interface Change {
  readonly now: ReturnType<typeof cellsOf>;
  readonly before: ReturnType<typeof cellsOf>;
}

/** Lets tables grow after an edit; null where none does. */
export function growTables(injector: Injector, edit: Edit): Consequence | null {
  const workbook = injector.get(IUniverInstanceService).getUnit<Workbook>(edit.unitID);
  let all: Consequence | null = null;
  for (const id of sheetsOf(edit)) {
    const sheet = workbook?.getSheetBySheetId(id);
    if (!sheet) continue;
    const change = { now: cellsOf(edit.redoMutations, id), before: cellsOf(edit.undoMutations, id) };
    const tables = injector.get(TableManager).getTablesBySubunitId(edit.unitID, id);
    for (const table of tables) {
      const others = tables.filter((one) => one !== table);
      const grown =
        downwards(injector, sheet, table, others, change) ?? rightwards(injector, sheet, table, others, change);
      all = joined(all, grown);
    }
  }
  return all;
}

/** Over all rows that the edit filled from right below the table on, blank ones between them included. */
function downwards(
  injector: Injector,
  sheet: Worksheet,
  table: Table,
  others: readonly Table[],
  change: Change,
): Consequence | null {
  const { startColumn, endColumn, endRow } = table.getRange();
  if (hasTotals(table, sheet)) return null;
  const inColumns = [...change.now].map(([row, cells]) => ({
    row,
    cells: [...cells].filter(([column]) => column >= startColumn && column <= endColumn),
  }));
  const touched = inColumns.filter(({ row, cells }) => row > endRow && cells.length > 0);
  const filled = touched.filter(({ cells }) => cells.some(([, cell]) => isFilled(cell)));
  if (!touched.some(({ row }) => row === endRow + 1) || filled.length === 0) return null;
  const last = filled.reduce((most, { row }) => Math.max(most, row), endRow);
  if (touched.length === 1 && filled.every(({ cells }) => areTotals(cells.map(([, cell]) => cell)))) return null;
  const area = { startRow: endRow + 1, endRow: last, startColumn, endColumn };
  if (!isFree(injector, sheet, others, change, area)) return null;
  return withRows(injector, sheet, table, { startRow: endRow + 1, endRow: last });
}

/**
 * By rows that were put in between a table and its row of totals: left out, they would part the table from its totals.
 */
export function growToTotals(injector: Injector, edit: Edit): Consequence | null {
  // What is typed into a cell is a document until it is taken over, with steps of its own.
  const workbook = injector.get(IUniverInstanceService).getUnit<Workbook>(edit.unitID, UniverInstanceType.UNIVER_SHEET);
  const all = (workbook?.getSheets() ?? []).flatMap((sheet) => {
    const id = sheet.getSheetId();
    const rows = inserted(edit, id);
    if (!rows || !isTotalsRow(sheet, rows.endRow + 1)) return [];
    const table = injector
      .get(TableManager)
      .getTablesBySubunitId(edit.unitID, id)
      .find((one) => one.getTableMeta()?.totals === true && one.getRange().endRow + 1 === rows.startRow);
    return table ? withRows(injector, sheet, table, rows) : [];
  });
  return joined(...all);
}

/** A table with rows below it taken in, their blank cells filled as the others of their columns are. */
function withRows(injector: Injector, sheet: Worksheet, table: Table, rows: Rows): Consequence | null {
  const range = table.getRange();
  const resized = resize(
    table,
    sheet,
    { updateRange: { newRange: { ...range, endRow: rows.endRow } } },
    { updateRange: { newRange: range } },
  );
  const known = { startRow: range.startRow + 1, endRow: range.endRow };
  const content = filledRows(injector, sheet, range, { ...range, ...rows }, known);
  return joined(resized, followGrowth(injector, sheet, range, rows.endRow), content);
}

/** By a column whose heading was typed right of the table's own. */
function rightwards(
  injector: Injector,
  sheet: Worksheet,
  table: Table,
  others: readonly Table[],
  change: Change,
): Consequence | null {
  const { startRow, endRow, startColumn, endColumn } = table.getRange();
  const column = endColumn + 1;
  const cell = change.now.get(startRow)?.get(column);
  if (!table.isShowHeader() || !isFilled(cell) || cell?.f) return null;
  const read = reader(injector, sheet);
  const heading = headingText(read(startRow, column));
  const known = Array.from({ length: column - startColumn }, (_, i) => headingText(read(startRow, startColumn + i)));
  if (!/\p{L}/u.test(heading) || known.some((one) => one.toLowerCase() === heading.toLowerCase())) return null;
  if (!isFree(injector, sheet, others, change, { startRow, endRow, startColumn: column, endColumn: column }))
    return null;
  const operation = { rowColType: "column", index: column, count: 1 };
  const id = `${table.getId()}.${column}.${heading}`;
  const columnsJson = [{ id, displayName: heading, dataType: "none", formula: "", meta: {}, style: {} }];
  const resized = resize(
    table,
    sheet,
    { rowColOperation: { ...operation, operationType: "insert", columnsJson } },
    { rowColOperation: { ...operation, operationType: "delete" } },
  );
  const look = sheet.getCellMatrix().getValue(startRow, endColumn)?.s ?? null;
  const content = written(injector, sheet, { [startRow]: { [column]: { s: look } } });
  return joined(resized, content);
}

/** Whether nothing stands in an area but what the edit put into cells that were blank. */
function isFree(
  injector: Injector,
  sheet: Worksheet,
  others: readonly Table[],
  { now, before }: Change,
  area: { startRow: number; endRow: number; startColumn: number; endColumn: number },
): boolean {
  const crosses = others.some((table) => {
    const other = table.getRange();
    return (
      other.startRow <= area.endRow &&
      other.endRow >= area.startRow &&
      other.startColumn <= area.endColumn &&
      other.endColumn >= area.startColumn
    );
  });
  if (crosses) return false;
  const read = reader(injector, sheet);
  for (let row = area.startRow; row <= area.endRow; row++) {
    for (let column = area.startColumn; column <= area.endColumn; column++) {
      const isNew = isFilled(now.get(row)?.get(column)) && !isFilled(before.get(row)?.get(column));
      if (!isNew && read(row, column) !== null) return false;
    }
  }
  return true;
}

function resize(table: Table, sheet: Worksheet, to: object, from: object): Consequence {
  const mutation = (config: object) => ({
    id: SetSheetTableMutation.id,
    params: { unitId: sheet.getUnitId(), subUnitId: sheet.getSheetId(), tableId: table.getId(), config },
  });
  return { redos: [mutation(to)], undos: [mutation(from)] };
}
