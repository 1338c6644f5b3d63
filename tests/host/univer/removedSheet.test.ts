import { SheetRenderController } from "@univerjs/preset-sheets-core";
import { expect, it } from "vitest";
import "../../../src/host/univer/editing/removedSheet";

it("takes no cells to be drawn anew while no sheet is in sight", () => {
  const { _rangeToBounds: boundsOf } = SheetRenderController.prototype as unknown as {
    _rangeToBounds(this: object, ranges: readonly object[]): unknown;
  };
  const cells = [{ startRow: 0, endRow: 0, startColumn: 0, endColumn: 0 }];
  const drawing = (param: unknown) => ({ _sheetSkeletonManagerService: { getCurrentParam: () => param } });
  expect(boundsOf.call(drawing(undefined), cells)).toEqual([]);
  const skeleton = {
    ...{ rowHeightAccumulation: [20], columnWidthAccumulation: [64] },
    ...{ rowHeaderWidth: 46, columnHeaderHeight: 20 },
  };
  expect(boundsOf.call(drawing({ skeleton }), cells)).toEqual([
    { top: 0, left: 0, bottom: 40, right: 110, width: 110, height: 40 },
  ]);
});
