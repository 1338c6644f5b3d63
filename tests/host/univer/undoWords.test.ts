import { CommandType, ICommandService, IResourceManagerService, UniverInstanceType } from "@univerjs/core";
import {
  ClearSelectionContentCommand,
  InsertColByRangeCommand,
  InsertRowByRangeCommand,
  InsertRowMutation,
  RemoveRowByRangeCommand,
  RemoveSheetCommand,
  ReorderRangeCommand,
  SetRangeValuesCommand,
  SetWorksheetNameCommand,
} from "@univerjs/preset-sheets-core";
import { describe, expect, it } from "vitest";
import "../../../src/host/univer/editing/tableCorrections";
import { BY_PANE, followEdits } from "../../../src/host/univer/editing/edits";
import { growTables } from "../../../src/host/univer/editing/growTables";
import { shown, undoWords } from "../../../src/host/univer/editing/undoWords";
import { Headless } from "./headless";

function open() {
  const cells = ["Vessel", "Tin", "Jar"].map((text, row) => ({ row, column: 0, content: { text } }));
  const tables = [{ name: "Vessels", row: 0, column: 0, headings: ["Vessel"], rows: 2 }];
  const page = new Headless([
    { name: "My vessels", widths: [], cells, tables },
    { name: "Other", widths: [], cells: [] },
  ]);
  const said: string[] = [];
  const wordsOf = undoWords(page.injector);
  followEdits(
    page.injector,
    (edit) => growTables(page.injector, edit),
    (edit) => said.push(shown(page.injector, edit.unitID, wordsOf(edit))),
  );
  return { page, said };
}

const rows = (startRow: number, endRow: number) => ({
  range: { startRow, endRow, startColumn: 0, endColumn: 25 },
  direction: 0,
});

it("says of undo which sheet was renamed, and where rows came, whatever follows on other sheets", async () => {
  const { page, said } = open();
  const other = page.workbook.getSheetBySheetName("Other");
  await page.run(SetRangeValuesCommand.id, {
    subUnitId: other?.getSheetId(),
    range: { startRow: 0, endRow: 0, startColumn: 0, endColumn: 0 },
    value: { f: "='My vessels'!A5" },
  });
  await page.run(SetWorksheetNameCommand.id, { name: "Jars" });
  await page.run(InsertRowByRangeCommand.id, rows(3, 3));
  expect(other?.getCellMatrix().getValue(0, 0)?.f).toBe("=Jars!A6");
  await page.run(RemoveSheetCommand.id, {});
  expect(said).toEqual(["typing in A1 on Other", "renaming My vessels to Jars", "inserting row 4", "removing a sheet"]);
});

describe("undo says what it would take back", () => {
  it("after typing, also where a table took the row in, and after many cells at once", async () => {
    const { page, said } = open();
    await page.enter(5, 1, [[6]]);
    await page.enter(3, 0, [["Cup"]]);
    await page.enter(5, 1, [
      [1, 2],
      [3, 4],
    ]);
    expect(said).toEqual(["typing in B6", "typing in A4", "a change of B6:C7"]);
  });

  it("after rows and columns, sorting and clearing", async () => {
    const { page, said } = open();
    await page.run(InsertRowByRangeCommand.id, rows(6, 6));
    await page.run(InsertRowByRangeCommand.id, rows(6, 8));
    await page.run(RemoveRowByRangeCommand.id, rows(6, 6));
    await page.run(InsertColByRangeCommand.id, {
      range: { startRow: 0, endRow: 999, startColumn: 2, endColumn: 2 },
      direction: 3,
    });
    const range = { startRow: 1, endRow: 2, startColumn: 0, endColumn: 0 };
    await page.run(ReorderRangeCommand.id, { range, order: { 1: 2, 2: 1 } });
    await page.run(ClearSelectionContentCommand.id, {
      ranges: [{ startRow: 1, endRow: 2, startColumn: 0, endColumn: 0 }],
    });
    expect(said).toEqual([
      "inserting row 7",
      "inserting rows 7 to 9",
      "removing row 7",
      "inserting column C",
      "sorting Vessels",
      "clearing A2:A3",
    ]);
  });

  it("also where the sheet scrolls before the step is done", async () => {
    const { page, said } = open();
    const commands = page.injector.get(ICommandService);
    const scroll = { id: "sheet.command.scroll-view", type: CommandType.COMMAND, handler: () => true };
    commands.registerCommand(scroll);
    commands.onCommandExecuted(({ id }) => {
      if (id === InsertRowMutation.id) commands.syncExecuteCommand(scroll.id);
    });
    await page.run(InsertRowByRangeCommand.id, rows(3, 3));
    expect(said).toEqual(["inserting row 4"]);
  });

  it("after what the pane did, and on which sheet where that is not the one in sight", async () => {
    const { page, said } = open();
    await page.enter(5, 1, [[6]], BY_PANE);
    page.workbook.setActiveSheet(page.workbook.getSheetBySheetId("sheet2") as never);
    const words = { text: "typing in B6", sheetId: "sheet1" };
    expect([...said, shown(page.injector, page.ids.unitId, words)]).toEqual([
      "what the pane wrote",
      "typing in B6 on My vessels",
    ]);
    expect(shown(page.injector, page.ids.unitId, undefined)).toBe("");
    const both = { text: "what the pane wrote", sheetId: "sheet2", others: ["sheet1"] };
    expect(shown(page.injector, page.ids.unitId, both)).toBe("what the pane wrote on Other and My vessels");
  });
});

it("a column put into a table keeps its place in what is kept of the workbook", async () => {
  const cells = ["Vessel", "Water"].map((text, column) => ({ row: 0, column, content: { text } }));
  const tables = [{ name: "Vessels", row: 0, column: 0, headings: ["Vessel", "Water"], rows: 2 }];
  const page = new Headless([{ name: "Vessels", widths: [], cells, tables }]);
  await page.run(InsertColByRangeCommand.id, {
    range: { startRow: 0, endRow: 999, startColumn: 1, endColumn: 1 },
    direction: 3,
  });
  const [kept] = page.injector
    .get(IResourceManagerService)
    .getResources(page.ids.unitId, UniverInstanceType.UNIVER_SHEET)
    .filter(({ name }) => name === "SHEET_TABLE_PLUGIN");
  const names = JSON.parse(kept?.data ?? "{}").sheet1.tables[0].columns.map(
    (one: { displayName: string }) => one.displayName,
  );
  expect([names[0], names[2]]).toEqual(["Vessel", "Water"]);
});
