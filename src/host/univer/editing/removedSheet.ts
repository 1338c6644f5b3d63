/** Corrections of what would break off the removal of a sheet in its midst, Univer's version 0.25.1. */

import type { IMutationInfo, Injector, IRange } from "@univerjs/core";
import {
  RemoveSheetCommand,
  SetRangeValuesMutation,
  SheetInterceptorService,
  SheetRenderController,
} from "@univerjs/preset-sheets-core";

interface Drawing {
  readonly _sheetSkeletonManagerService: { getCurrentParam(): unknown };
  _rangeToBounds(ranges: readonly IRange[]): object[];
}

// Until the next sheet is drawn there are no cells in sight. Looked for, they would break it off: formulas to the sheet
// would keep their last numbers, and undo would not bring it back.
const drawing = SheetRenderController.prototype as unknown as Drawing;
const boundsOf = drawing._rangeToBounds;
drawing._rangeToBounds = function (ranges) {
  return this._sheetSkeletonManagerService.getCurrentParam() ? boundsOf.call(this, ranges) : [];
};

/** Where the sheet's own formulas name it, Univer would write into them when they are gone, and break off as well. */
export function removeSheetWhole(injector: Injector): void {
  const interceptors = injector.get(SheetInterceptorService);
  const collect = interceptors.onCommandExecute.bind(interceptors);
  interceptors.onCommandExecute = (command) => {
    const found = collect(command);
    if (command.id !== RemoveSheetCommand.id) return found;
    const { subUnitId } = command.params as { subUnitId: string };
    const isElsewhere = ({ id, params }: IMutationInfo) =>
      id !== SetRangeValuesMutation.id || (params as { subUnitId: string }).subUnitId !== subUnitId;
    return { ...found, redos: found.redos.filter(isElsewhere), undos: found.undos.filter(isElsewhere) };
  };
}
