/** Corrections of what becomes of tables when their rows or columns are removed, table plugin, version 0.25.1. */

import type { IMutationInfo, Injector, IRange } from "@univerjs/core";
import { getVisibleRanges, RemoveRowCommand, SheetInterceptorService } from "@univerjs/preset-sheets-core";
import { AddSheetTableMutation, SetSheetTableMutation, TableManager } from "@univerjs/preset-sheets-table";

interface Params {
  readonly unitId: string;
  readonly subUnitId: string;
  readonly tableId: string;
}

export function followRemoved(injector: Injector): void {
  const interceptors = injector.get(SheetInterceptorService);
  const collect = interceptors.onCommandExecute.bind(interceptors);
  interceptors.onCommandExecute = (command) => {
    const found = collect(command);
    const redos =
      command.id === RemoveRowCommand.id
        ? found.redos.map((one) => shortened(injector, one, (command.params as { range: IRange }).range))
        : found.redos;
    return { ...found, redos, undos: found.undos.map((one) => broughtBack(injector, one)) };
  };
}

/** A table ends higher by the rows of its own that go: not by those that a filter hides, nor by others below it. */
function shortened(injector: Injector, mutation: IMutationInfo, removed: IRange): IMutationInfo {
  const { unitId, subUnitId, tableId } = mutation.params as Params;
  const range =
    mutation.id === SetSheetTableMutation.id && injector.get(TableManager).getTable(unitId, tableId)?.getRange();
  if (!range) return mutation;
  const count = getVisibleRanges([removed], injector, unitId, subUnitId).reduce((sum, { startRow, endRow }) => {
    const [first, last] = [Math.max(startRow, range.startRow + 1), Math.min(endRow, range.endRow)];
    return sum + Math.max(0, last - first + 1);
  }, 0);
  const newRange = { ...range, endRow: range.endRow - count };
  return { ...mutation, params: { ...(mutation.params as Params), config: { updateRange: { newRange } } } };
}

/** A table that was removed comes back with its filters, and with the names of its columns. */
function broughtBack(injector: Injector, mutation: IMutationInfo): IMutationInfo {
  const { unitId, tableId } = mutation.params as Params;
  const table = mutation.id === AddSheetTableMutation.id && injector.get(TableManager).getTable(unitId, tableId);
  if (!table) return mutation;
  const { options, columns, filters } = table.toJSON();
  const whole = { ...options, columns, filters: filters.tableColumnFilterList };
  return { ...mutation, params: { ...(mutation.params as Params), options: whole } };
}
