/** Rules for cells far below those that the sheet has here move with the rows above them, as near ones do. */

import { type Injector, type IRange, IUniverInstanceService, type Workbook } from "@univerjs/core";
import { RefRangeService } from "@univerjs/preset-sheets-core";
import { WHOLE } from "../file/areas";

/** Who is to hear of a change of these ranges. */
type Heard = (ranges: readonly IRange[], unitId: string, subUnitId: string) => unknown;

/** Univer lets what moves end with its last row and column, and tells nothing beyond of it. */
export function moveFarRules(injector: Injector): void {
  const service = injector.get(RefRangeService) as unknown as { _checkRange: Heard };
  const check = service._checkRange;
  const workbooks = injector.get(IUniverInstanceService);
  service._checkRange = (ranges, unitId, subUnitId) => {
    const sheet = workbooks.getUnit<Workbook>(unitId)?.getSheetBySheetId(subUnitId);
    if (!sheet) return check(ranges, unitId, subUnitId);
    const [rows, columns] = [sheet.getRowCount(), sheet.getColumnCount()];
    const whole = ranges.map((range) => ({
      ...range,
      ...(range.endRow === rows - 1 && { endRow: WHOLE.rows - 1 }),
      ...(range.endColumn === columns - 1 && { endColumn: WHOLE.columns - 1 }),
    }));
    return check(whole, unitId, subUnitId);
  };
}
