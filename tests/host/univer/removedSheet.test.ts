import { UndoCommand } from "@univerjs/core";
import { RemoveSheetCommand, SheetRenderController } from "@univerjs/preset-sheets-core";
import { expect, it } from "vitest";
import { removeSheetWhole } from "../../../src/host/univer/editing/removedSheet";
import { Headless } from "./headless";

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

it("removes a sheet whose own formulas name it, and has it back with them", async () => {
  const cells = [{ row: 0, column: 0, content: { number: 2 } }];
  const own = { row: 0, column: 1, content: { formula: "=Costs!A1*2" } };
  const page = new Headless([
    { name: "Costs", widths: [], cells: [...cells, own] },
    { name: "Sums", widths: [], cells: [{ row: 0, column: 0, content: { formula: "=Costs!B1" } }] },
  ]);
  removeSheetWhole(page.injector);
  const names = () => page.workbook.getSheets().map((sheet) => sheet.getName());
  const formula = (sheet: string, column: number) =>
    page.workbook.getSheetBySheetName(sheet)?.getCellMatrix().getValue(0, column)?.f;
  expect(await page.run(RemoveSheetCommand.id, {})).toBe(true);
  expect([names(), formula("Sums", 0)]).toEqual([["Sums"], "=#REF!"]);
  await page.run(UndoCommand.id, {});
  expect([names(), formula("Sums", 0), formula("Costs", 1)]).toEqual([["Costs", "Sums"], "=Costs!B1", "=Costs!A1*2"]);
});
