import {
  generateRandomId,
  ICommandService,
  type IWorkbookData,
  type Univer,
  UniverInstanceType,
  type Workbook,
} from "@univerjs/core";
import { SetWorksheetActiveOperation } from "@univerjs/preset-sheets-core";
import { ASIDE } from "./file/cellData";
import { withTotalsMarked } from "./totals";

/** Opens a workbook at the sheet that was shown when it was left, whatever else is open. */
export function openWorkbook(univer: Univer, workbook: IWorkbookData): Workbook {
  // The id must be one that was never used before: the formula engine keeps what it parsed by it.
  const data = { ...withTotalsMarked(workbook), id: generateRandomId() };
  const unit = univer.createUnit<IWorkbookData, Workbook>(UniverInstanceType.UNIVER_SHEET, data);
  const shown = unit.getSheetBySheetId(workbook.custom?.[ASIDE]?.active ?? "");
  if (!shown || shown.isSheetHidden()) return unit;
  // What draws the sheet follows the operation only.
  const ids = { unitId: unit.getUnitId(), subUnitId: shown.getSheetId() };
  univer.__getInjector().get(ICommandService).syncExecuteCommand(SetWorksheetActiveOperation.id, ids);
  return unit;
}
