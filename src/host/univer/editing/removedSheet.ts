/** A correction of what is drawn when the sheet in sight is removed, sheets' surface, version 0.25.1. */

import type { IRange } from "@univerjs/core";
import { SheetRenderController } from "@univerjs/preset-sheets-core";

interface Drawing {
  readonly _sheetSkeletonManagerService: { getCurrentParam(): unknown };
  _rangeToBounds(ranges: readonly IRange[]): object[];
}

// Until the next sheet is drawn there are no cells in sight. Looked for, they would break off the removal in its midst:
// formulas to the sheet would keep their last numbers, and undo would not bring it back.
const drawing = SheetRenderController.prototype as unknown as Drawing;
const boundsOf = drawing._rangeToBounds;
drawing._rangeToBounds = function (ranges) {
  return this._sheetSkeletonManagerService.getCurrentParam() ? boundsOf.call(this, ranges) : [];
};
