/** Rows that a table's filter hides stay hidden where they go; the table plugin, version 0.25.1, hides others instead. */

import { ICommandService, type Injector, type IRange } from "@univerjs/core";
import {
  InsertRowMutation,
  MoveRowsMutation,
  RemoveRowMutation,
  ReorderRangeMutation,
} from "@univerjs/preset-sheets-core";
import { DeleteSheetTableMutation, TableManager } from "@univerjs/preset-sheets-table";
import { hideRows } from "./filterCorrections";

interface Params {
  readonly unitId: string;
  readonly subUnitId: string;
  readonly range: IRange;
  readonly sourceRange: IRange;
  readonly targetRange: IRange;
  /** For each row that takes another's cells, that other row. */
  readonly order: Readonly<Record<number, number>>;
}

/** Where a row goes; null where it goes away. */
type Move = (row: number) => number | null;

export function moveFilteredRows(injector: Injector): void {
  const tables = injector.get(TableManager);
  // Before it is done, so that what is drawn after it finds the rows where they are.
  injector.get(ICommandService).beforeCommandExecuted(({ id, params }) => {
    if (id === DeleteSheetTableMutation.id) showAll(tables, params as { unitId: string; tableId: string });
    const move = params && moveOf(id, params as Params);
    if (!move) return;
    const { unitId, subUnitId, range } = params as Params;
    for (const table of tables.getTablesBySubunitId(unitId, subUnitId)) {
      const hidden = table.getTableFilters().getFilterOutRows();
      if (!hidden?.size || (id === ReorderRangeMutation.id && !isAcross(range, table.getRange()))) continue;
      hideRows(tables, unitId, table, new Set([...hidden].flatMap((row) => move(row) ?? [])));
    }
  });
}

/** What a table that is removed hides would stay hidden. */
function showAll(tables: TableManager, { unitId, tableId }: { unitId: string; tableId: string }): void {
  const table = tables.getTable(unitId, tableId);
  if (table?.getTableFilters().getFilterOutRows()?.size) hideRows(tables, unitId, table, new Set());
}

function moveOf(id: string, { range, sourceRange, targetRange, order }: Params): Move | null {
  if (id === InsertRowMutation.id) return inserted(range);
  if (id === RemoveRowMutation.id) return removed(range);
  if (id === MoveRowsMutation.id) return moved(sourceRange, targetRange.startRow);
  if (id !== ReorderRangeMutation.id) return null;
  const to = new Map(Object.entries(order).map(([row, from]) => [from, Number(row)]));
  return (row) => to.get(row) ?? row;
}

const countOf = ({ startRow, endRow }: IRange): number => endRow - startRow + 1;

const inserted =
  (range: IRange): Move =>
  (row) =>
    row < range.startRow ? row : row + countOf(range);

const removed =
  (range: IRange): Move =>
  (row) => {
    if (row < range.startRow) return row;
    return row > range.endRow ? row - countOf(range) : null;
  };

function moved(from: IRange, to: number): Move {
  const count = countOf(from);
  return (row) => {
    const isMoved = row >= from.startRow && row <= from.endRow;
    if (to <= from.startRow) {
      if (isMoved) return row - from.startRow + to;
      return row >= to && row < from.startRow ? row + count : row;
    }
    if (isMoved) return row - from.startRow + to - count;
    return row > from.endRow && row < to ? row - count : row;
  };
}

const isAcross = (range: IRange, table: IRange): boolean =>
  range.startColumn <= table.startColumn && range.endColumn >= table.endColumn;
