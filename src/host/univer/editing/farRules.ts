/** Rules for cells far below those that the sheet has here move with the rows above them, as near ones do. */

import { type Injector, type IRange, IUniverInstanceService, type Workbook, type Worksheet } from "@univerjs/core";
import { RefRangeService } from "@univerjs/preset-sheets-core";
import { WHOLE } from "../file/areas";

/** Says what follows for a rule from a command. */
type Follow = (command: unknown) => unknown;

/** What is private in Univer's service: who is to hear of a change of these ranges. */
interface Heard {
  _checkRange(ranges: readonly IRange[], unitId: string, subUnitId: string): Follow[];
}

/** For Univer what moves ends with the last row and column of its sheet. */
export function moveFarRules(injector: Injector): void {
  const service = injector.get(RefRangeService) as unknown as Heard;
  const heard = service._checkRange;
  const workbooks = injector.get(IUniverInstanceService);
  service._checkRange = (ranges, unitId, subUnitId) => {
    const sheet = workbooks.getUnit<Workbook>(unitId)?.getSheetBySheetId(subUnitId);
    const far = new Set(sheet ? heard(beyond(sheet), unitId, subUnitId) : []);
    if (!sheet || far.size === 0) return heard(ranges, unitId, subUnitId);
    const found = heard(
      ranges.map((range) => toTheEnd(range, sheet)),
      unitId,
      subUnitId,
    );
    return found.map((follow) =>
      far.has(follow) ? (command: unknown) => asWhole(sheet, () => follow(command)) : follow,
    );
  };
}

const LAST = { endRow: WHOLE.rows - 1, endColumn: WHOLE.columns - 1 };

const beyond = (sheet: Worksheet): IRange[] => [
  { startRow: sheet.getRowCount(), startColumn: 0, ...LAST },
  { startRow: 0, startColumn: sheet.getColumnCount(), ...LAST },
];

const toTheEnd = (range: IRange, sheet: Worksheet): IRange => ({
  ...range,
  ...(range.endRow === sheet.getRowCount() - 1 && { endRow: LAST.endRow }),
  ...(range.endColumn === sheet.getColumnCount() - 1 && { endColumn: LAST.endColumn }),
});

/** While something is worked out for a sheet as large as that of the file. */
function asWhole<T>(sheet: Worksheet, work: () => T): T {
  const own = sheet as { getRowCount?: () => number; getColumnCount?: () => number };
  own.getRowCount = () => WHOLE.rows;
  own.getColumnCount = () => WHOLE.columns;
  try {
    return work();
  } finally {
    delete own.getRowCount;
    delete own.getColumnCount;
  }
}
