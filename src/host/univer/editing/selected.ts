import {
  type Injector,
  IUniverInstanceService,
  UniverInstanceType,
  type Workbook,
  type Worksheet,
} from "@univerjs/core";
import { SheetsSelectionsService } from "@univerjs/preset-sheets-core";

export interface Selected {
  readonly book: Workbook;
  readonly sheet: Worksheet;
  readonly ids: { readonly unitId: string; readonly subUnitId: string };
  readonly row: number;
  readonly column: number;
}

/** The cell that is selected; of a merged one, where it begins. */
export function selectedCell(injector: Injector): Selected | null {
  const book = injector.get(IUniverInstanceService).getCurrentUnitOfType<Workbook>(UniverInstanceType.UNIVER_SHEET);
  const sheet = book?.getActiveSheet();
  if (!book || !sheet) return null;
  const at = injector.get(SheetsSelectionsService).getCurrentLastSelection()?.primary;
  return {
    book,
    sheet,
    ids: { unitId: book.getUnitId(), subUnitId: sheet.getSheetId() },
    row: at?.actualRow ?? 0,
    column: at?.actualColumn ?? 0,
  };
}
