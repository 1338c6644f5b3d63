/** Finding looks through the whole sheet where one cell is selected, a merged one too. */

import {
  ICommandService,
  type Injector,
  IUniverInstanceService,
  UniverInstanceType,
  type Workbook,
} from "@univerjs/core";
import { getPrimaryForRange, SetSelectionsOperation, SheetsSelectionsService } from "@univerjs/preset-sheets-core";

const OPENS = /^ui\.operation\.open-(find|replace)-dialog$/;

/** Univer looks through a selection of more than a cell only, and takes the first cell of a merged one for that. */
export function findWhole(injector: Injector): void {
  injector.get(ICommandService).beforeCommandExecuted(({ id }) => {
    if (OPENS.test(id)) selectMerged(injector);
  });
}

function selectMerged(injector: Injector): void {
  const workbook = injector.get(IUniverInstanceService).getCurrentUnitOfType<Workbook>(UniverInstanceType.UNIVER_SHEET);
  const [selection, ...more] = injector.get(SheetsSelectionsService).getCurrentSelections();
  if (!workbook || !selection || more.length > 0) return;
  const sheet = workbook.getActiveSheet();
  const { startRow, startColumn, endRow, endColumn } = selection.range;
  const merged = sheet.getMergedCell(startRow, startColumn);
  if (!merged || endRow > merged.endRow || endColumn > merged.endColumn) return;
  const range = { ...merged };
  injector.get(ICommandService).syncExecuteCommand(SetSelectionsOperation.id, {
    unitId: workbook.getUnitId(),
    subUnitId: sheet.getSheetId(),
    selections: [{ ...selection, range, primary: getPrimaryForRange(range, sheet) }],
  });
}
