import { CommandType, ICommandService } from "@univerjs/core";
import {
  AddWorksheetMergeMutation,
  SetSelectionsOperation,
  SheetsSelectionsService,
} from "@univerjs/preset-sheets-core";
import { expect, it } from "vitest";
import { findWhole } from "../../../src/host/univer/work/finding";
import { Headless } from "./headless";

const OPEN = "ui.operation.open-find-dialog";
const MERGED = { startRow: 0, endRow: 0, startColumn: 0, endColumn: 3 };

const open = async (range: object) => {
  const page = new Headless([
    { name: "Costs", widths: [], cells: [{ row: 0, column: 0, content: { text: "Costs" } }] },
  ]);
  // Stands for the command that opens the dialog, which is not there without a page.
  page.injector.get(ICommandService).registerCommand({ id: OPEN, type: CommandType.OPERATION, handler: () => true });
  await page.run(AddWorksheetMergeMutation.id, { ranges: [MERGED] });
  findWhole(page.injector);
  await page.run(SetSelectionsOperation.id, { selections: [{ range, primary: null, style: null }] });
  await page.run(OPEN, {});
  return page.injector.get(SheetsSelectionsService).getCurrentSelections()[0]?.range;
};

it("has the whole of a merged cell selected, of which Univer knows that it is one cell", async () => {
  expect(await open({ startRow: 0, endRow: 0, startColumn: 0, endColumn: 0 })).toMatchObject(MERGED);
});

it("leaves a selection of several cells as it is", async () => {
  const several = { startRow: 0, endRow: 2, startColumn: 0, endColumn: 3 };
  expect(await open(several)).toMatchObject(several);
});
