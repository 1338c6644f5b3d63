/** Has totals of what is shown worked out anew when a filter hides other rows. */

import { type Injector, IUniverInstanceService, type Workbook } from "@univerjs/core";
import { IActiveDirtyManagerService } from "@univerjs/engine-formula";
import { SetSheetTableFilterMutation } from "@univerjs/preset-sheets-table";
import { filteredBy } from "../../engine/hiddenRows";

export function followHidden(injector: Injector): void {
  const workbooks = injector.get(IUniverInstanceService);
  filteredBy(
    injector,
    (unitId, sheetId, row) =>
      workbooks.getUnit<Workbook>(unitId)?.getSheetBySheetId(sheetId)?.isRowFiltered(row) ?? false,
  );
  // A calculation begins, in which the functions that look at hidden rows are always worked out. Those of sheets and a
  // maker's hiding begin one by themselves.
  const commandId = SetSheetTableFilterMutation.id;
  injector.get(IActiveDirtyManagerService).register(commandId, { commandId, getDirtyData: () => ({}) });
}
