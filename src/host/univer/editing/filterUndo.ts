/** A correction of what undo makes of a table's filter that was changed, table plugin, version 0.25.1. */

import { ICommandService, IUndoRedoService, sequenceExecute } from "@univerjs/core";
import { SetSheetTableFilterCommand, SetSheetTableFilterMutation, TableManager } from "@univerjs/preset-sheets-table";

// The filter that was there before comes back. Univer would clear it.
SetSheetTableFilterCommand.handler = (accessor, params) => {
  if (!params) return false;
  const { unitId, tableId, column } = params;
  const tableFilter = accessor.get(TableManager).getTable(unitId, tableId)?.getTableFilterColumn(column);
  const redoMutations = [{ id: SetSheetTableFilterMutation.id, params }];
  const undoMutations = [{ id: SetSheetTableFilterMutation.id, params: { ...params, tableFilter } }];
  if (!sequenceExecute(redoMutations, accessor.get(ICommandService)).result) return false;
  accessor.get(IUndoRedoService).pushUndoRedo({ unitID: unitId, undoMutations, redoMutations });
  return true;
};
