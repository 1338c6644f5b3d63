import {
  CellValueType,
  Direction,
  ICommandService,
  type IWorkbookData,
  LocaleType,
  RTree,
  type Workbook,
} from "@univerjs/core";
import { IDependencyManagerService, ISuperTableService, Lexer } from "@univerjs/engine-formula";
import {
  InsertRowCommand,
  InsertSheetCommand,
  RemoveRowCommand,
  RemoveSheetCommand,
  SetRangeValuesMutation,
  SetWorksheetNameCommand,
} from "@univerjs/preset-sheets-core";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { UniverInNode } from "../host/univer/univerInNode";

let univer: UniverInNode;
/** The engine keeps what it parsed by the workbook's id. */
let ids = 0;

type Cells = Record<string, number | string>;

/** Row and column of a cell such as B6. */
const place = (name: string): [number, number] => [Number(name.slice(1)) - 1, name.charCodeAt(0) - 65];

const content = (value: number | string) =>
  typeof value === "number" ? { v: value, t: CellValueType.NUMBER, f: null } : { f: value };

function cellData(cells: Cells) {
  const rows: Record<number, Record<number, object>> = {};
  for (const [name, value] of Object.entries(cells)) {
    const [row, column] = place(name);
    rows[row] = { ...rows[row], [column]: content(value) };
  }
  return rows;
}

function open(sheets: Record<string, Cells>, rowCount = 20): Promise<Workbook> {
  const id = `looked${++ids}`;
  const data = Object.entries(sheets).map(([name, cells]) => [
    name,
    { id: name, name, rowCount, columnCount: 10, cellData: cellData(cells) },
  ]);
  return univer.open({
    ...{ id, name: id, appVersion: "", locale: LocaleType.EN_US, styles: {}, sheetOrder: Object.keys(sheets) },
    sheets: Object.fromEntries(data),
  } as IWorkbookData);
}

async function run(workbook: Workbook, command: string, params: object): Promise<void> {
  const unitId = workbook.getUnitId();
  await univer.injector.get(ICommandService).executeCommand(command, { unitId, subUnitId: "First", ...params });
  await univer.settled();
}

const write = (workbook: Workbook, cells: Cells, sheet = "First") =>
  run(workbook, SetRangeValuesMutation.id, { subUnitId: sheet, cellValue: cellData(cells) });

function valueIn(workbook: Workbook, name: string, sheet = "First") {
  const [row, column] = place(name);
  return workbook.getSheetBySheetId(sheet)?.getCellRaw(row, column)?.v;
}

beforeEach(() => {
  univer = new UniverInNode();
});
afterEach(() => {
  vi.restoreAllMocks();
  univer.dispose();
});

describe("an edit", () => {
  it("parses no formula of many anew", async () => {
    // One more than the engine keeps by itself.
    const rows = Array.from({ length: 5001 }, (_, i) => [`B${i + 1}`, `=A${i + 1}+1`]);
    const parsed = vi.spyOn(Lexer.prototype, "treeBuilder");
    const workbook = await open({ First: { A1: 1, ...Object.fromEntries(rows) } }, 5010);
    expect(parsed).toHaveBeenCalledTimes(5001);
    await write(workbook, { A1: 2 });
    expect(parsed).toHaveBeenCalledTimes(5001);
    expect(valueIn(workbook, "B1")).toBe(3);
  });

  it("notes nothing of formulas that look at the same cells as before", async () => {
    const workbook = await open({ First: { A1: 1, B1: "=SUM(A1:A9)", C1: "=B1*2", D1: "=SUM($A:$B)" } });
    const noted = vi.spyOn(RTree.prototype, "bulkInsert");
    await write(workbook, { A2: 2 });
    await write(workbook, { A3: 3 });
    expect(noted).not.toHaveBeenCalled();
    expect([valueIn(workbook, "B1"), valueIn(workbook, "C1")]).toEqual([6, 12]);
  });

  it("forgets what a formula looked at that is written over, without going through the cells in between", async () => {
    const workbook = await open({ First: { D1: 2, A9: 1, B9: "=A9*$D$1", C9: "=SUM(A1:A9)*$D$1" } });
    const notes = univer.injector.get(IDependencyManagerService);
    const users = (name: string) => {
      const [row, column] = place(name);
      const range = { startRow: row, endRow: row, startColumn: column, endColumn: column };
      notes.openKdTree();
      return notes.searchDependency([{ unitId: workbook.getUnitId(), sheetId: "First", range }]).size;
    };
    expect(["D1", "A9", "A5", "B5"].map(users)).toEqual([2, 2, 1, 0]);
    const inBetween = vi.spyOn(
      RTree.prototype as unknown as { _removeCellCacheByRange(): void },
      "_removeCellCacheByRange",
    );
    await write(workbook, { B9: 1, C9: "=B5" });
    expect(inBetween).not.toHaveBeenCalled();
    expect(["D1", "A9", "A5", "B5"].map(users)).toEqual([0, 0, 0, 1]);
  });
});

describe("a formula follows the cells it looks at", () => {
  it("when it is written over by another one", async () => {
    const workbook = await open({ First: { A1: 1, B1: 10, C1: "=A1*2" } });
    await write(workbook, { C1: "=B1*2" });
    await write(workbook, { B1: 20 });
    expect(valueIn(workbook, "C1")).toBe(40);
    await write(workbook, { C1: "=A1*2" });
    await write(workbook, { A1: 3 });
    expect(valueIn(workbook, "C1")).toBe(6);
  });

  it("on two sheets, each its own, written in the same words", async () => {
    const cells = { A1: 1, B1: "=SUM(A1:A3)" };
    const workbook = await open({ First: cells, Second: cells });
    await write(workbook, { A2: 7 });
    await write(workbook, { A2: 5 }, "Second");
    expect([valueIn(workbook, "B1"), valueIn(workbook, "B1", "Second")]).toEqual([8, 6]);
  });

  it("in its own row of a table, each its own, written in the same words", async () => {
    const inRow = "=Pours[[#This Row],[Water]]*2";
    const workbook = await open({ First: { A1: '="Water"', A2: 1, A3: 2 } });
    univer.injector.get(ISuperTableService).registerTable(workbook.getUnitId(), "Pours", {
      sheetId: "First",
      range: { startRow: 0, startColumn: 0, endRow: 2, endColumn: 1 },
      titleMap: new Map([["Water", 0]]),
    });
    await write(workbook, { B2: inRow, B3: inRow });
    await write(workbook, { A2: 5 });
    await write(workbook, { A3: 7 });
    expect([valueIn(workbook, "B2"), valueIn(workbook, "B3")]).toEqual([10, 14]);
  });

  it("when rows come and go above them", async () => {
    const workbook = await open({ First: { A3: 1, B3: "=A3*2", B4: "=SUM(A3:A4)" } });
    const range = { startRow: 0, endRow: 0, startColumn: 0, endColumn: 9 };
    await run(workbook, InsertRowCommand.id, { range, direction: Direction.UP });
    await write(workbook, { A4: 5 });
    expect([valueIn(workbook, "B4"), valueIn(workbook, "B5")]).toEqual([10, 5]);
    await run(workbook, RemoveRowCommand.id, { range });
    await write(workbook, { A3: 6 });
    expect([valueIn(workbook, "B3"), valueIn(workbook, "B4")]).toEqual([12, 6]);
  });

  it("on a sheet that is named anew, or that takes the name of one that is gone", async () => {
    const workbook = await open({ First: { A1: "=Second!A1*2", B1: "=SUM(Second!A1:A2)" }, Second: { A1: 1 } });
    await run(workbook, SetWorksheetNameCommand.id, { subUnitId: "Second", name: "Other" });
    await write(workbook, { A1: 5 }, "Second");
    expect([valueIn(workbook, "A1"), valueIn(workbook, "B1")]).toEqual([10, 5]);
    await write(workbook, { A2: "=Third!A1*2" });
    const sheet = { id: "Third", name: "Third", rowCount: 20, columnCount: 10, cellData: {} };
    await run(workbook, InsertSheetCommand.id, { index: 2, sheet });
    await write(workbook, { A1: 4 }, "Third");
    expect(valueIn(workbook, "A2")).toBe(8);
  });

  it("on another sheet after a third one is gone", async () => {
    const workbook = await open({
      First: { A1: "=SUM(Second!A1:A2)" },
      Second: { A1: 1 },
      Third: { A1: "=Second!A1" },
    });
    await run(workbook, RemoveSheetCommand.id, { subUnitId: "Third" });
    await write(workbook, { A2: 5 }, "Second");
    expect(valueIn(workbook, "A1")).toBe(6);
  });

  it("which a function finds by a number that changes", async () => {
    const formulas = { C1: "=INDEX(A1:A3,B1)", C2: "=OFFSET(A1,B1-1,0)" };
    const workbook = await open({ First: { A1: 1, A2: 2, A3: 3, B1: 1, ...formulas } });
    const results = () => ["C1", "C2"].map((name) => valueIn(workbook, name));
    await write(workbook, { B1: 3 });
    expect(results()).toEqual([3, 3]);
    await write(workbook, { A3: 30 });
    expect(results()).toEqual([30, 30]);
  });

  it("where a function finds them, also in a formula that was seen before and in another one by then", async () => {
    const workbook = await open({ First: { A1: 1, A2: 2, B1: 2, C1: '=INDIRECT("A"&B1)*2', C2: "=A1*2" } });
    await write(workbook, { A2: 5 });
    expect(valueIn(workbook, "C1")).toBe(10);
    await write(workbook, { B1: 1, C2: '=INDIRECT("A"&B1)*2' });
    await write(workbook, { A1: 7 });
    expect([valueIn(workbook, "C1"), valueIn(workbook, "C2")]).toEqual([14, 14]);
  });

  it("of a formula that is worked out each time, deep inside of it too, at each edit", async () => {
    const workbook = await open({ First: { A1: 1, B1: "=IF(TRUE,1+RAND(),0)", B2: "=B1", B3: "=A1" } });
    const seen = new Set([valueIn(workbook, "B1")]);
    for (const edit of [2, 3, 4]) {
      await write(workbook, { A1: edit });
      seen.add(valueIn(workbook, "B1"));
      expect([valueIn(workbook, "B2"), valueIn(workbook, "B3")]).toEqual([valueIn(workbook, "B1"), edit]);
    }
    // Of four random numbers no two are alike.
    expect(seen.size).toBe(4);
  });
});
