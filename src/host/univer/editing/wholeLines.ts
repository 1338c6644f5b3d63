import { ICommandService, type Injector, type IRange, RANGE_TYPE } from "@univerjs/core";
import { RemoveColByRangeCommand, RemoveRowByRangeCommand } from "@univerjs/preset-sheets-core";

const WHOLE: Readonly<Record<string, RANGE_TYPE>> = {
  [RemoveColByRangeCommand.id]: RANGE_TYPE.COLUMN,
  [RemoveRowByRangeCommand.id]: RANGE_TYPE.ROW,
};

/**
 * Where a cell is selected, Univer removes its whole row or column but takes it for a part of one: references to whole
 * rows and columns, such as `B:B`, would mean others than before.
 */
export function removeWholeLines(injector: Injector): void {
  injector.get(ICommandService).beforeCommandExecuted(({ id, params }) => {
    const rangeType = WHOLE[id];
    if (rangeType === undefined) return;
    const removed = params as { range: IRange };
    removed.range = { ...removed.range, rangeType };
  });
}
