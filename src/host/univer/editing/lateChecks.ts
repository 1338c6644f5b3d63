/** A correction of the data validation plugin, version 0.25.1. */

import type { IUniverInstanceService, Workbook } from "@univerjs/core";
import { SheetsDataValidationValidatorService } from "@univerjs/preset-sheets-data-validation";

// Cells of sheets that are not shown are checked when the page is idle: their workbook may have been left by then, or
// their sheet removed. Univer takes that for a fault.
const check = SheetsDataValidationValidatorService.prototype.validatorRanges;
SheetsDataValidationValidatorService.prototype.validatorRanges = async function (unitId, subUnitId, ranges) {
  const { _univerInstanceService: units } = this as unknown as { _univerInstanceService: IUniverInstanceService };
  const sheet = units.getUnit<Workbook>(unitId)?.getSheetBySheetId(subUnitId);
  return sheet ? check.call(this, unitId, subUnitId, ranges) : [];
};
