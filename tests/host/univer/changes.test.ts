import {
  CommandType,
  Direction,
  type ICommandInfo,
  ICommandService,
  type IExecutionOptions,
  type Injector,
  IUniverInstanceService,
  type IWorkbookData,
  LocaleType,
  RANGE_TYPE,
  RedoCommand,
  UndoCommand,
  Univer,
  UniverInstanceType,
  type Workbook,
} from "@univerjs/core";
import { UniverFormulaEnginePlugin } from "@univerjs/engine-formula";
import {
  AddWorksheetMergeCommand,
  CopySheetCommand,
  InsertColByRangeCommand,
  InsertRowByRangeCommand,
  InsertSheetCommand,
  MoveRangeCommand,
  MoveRowsCommand,
  RemoveColByRangeCommand,
  RemoveRowByRangeCommand,
  RemoveSheetCommand,
  SetDefinedNameCommand,
  SetFrozenCommand,
  SetRangeValuesCommand,
  SetRowHiddenCommand,
  SetStyleCommand,
  SetTabColorCommand,
  SetWorksheetColWidthMutation,
  SetWorksheetHideCommand,
  SetWorksheetNameCommand,
  SetWorksheetOrderCommand,
  SheetsSelectionsService,
  UniverSheetsFormulaPlugin,
  UniverSheetsPlugin,
} from "@univerjs/preset-sheets-core";
import { AddSheetTableCommand, UniverSheetsTablePlugin } from "@univerjs/preset-sheets-table";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { type Change, changeBy, onDataChange } from "../../../src/host/univer/changes";
import { SetSettingsMutation } from "../../../src/host/univer/settingsMutation";
import { snapshotOf } from "../../../src/host/univer/snapshot";
import { isAmong, isOfBook, pieceOf, slotsOf, slotsOfChange } from "../../../src/tryout/keep/slots";

const ids = { unitId: "book", subUnitId: "one" };
const row = (from: number, to = from) => ({ startRow: from, endRow: to, startColumn: 0, endColumn: 9 });
const column = (from: number) => ({ startRow: 0, endRow: 999, startColumn: from, endColumn: from });
const area = { startRow: 1, endRow: 3, startColumn: 1, endColumn: 2 };

const cells = () => ({
  0: { 0: { v: "Vessel" }, 1: { v: "Fill" } },
  1: { 0: { v: "Tin" }, 1: { v: 200 }, 2: { f: "=B2*2" } },
  2: { 0: { v: "Jar" }, 1: { v: 300 }, 2: { f: "=SUM(B2:B3)" } },
  600: { 3: { v: 7 } },
});

const data = (): IWorkbookData => ({
  id: "book",
  name: "A book",
  appVersion: "",
  locale: LocaleType.EN_US,
  styles: {},
  sheetOrder: ["one", "two"],
  sheets: {
    one: { id: "one", name: "One", cellData: cells(), rowCount: 1000, columnCount: 26 },
    two: { id: "two", name: "Two", cellData: { 5: { 5: { f: "=One!B3+1" } } }, rowCount: 1000, columnCount: 26 },
  },
});

/** What a maker can do to a workbook, by the command that does it. */
const DOINGS: readonly (readonly [string, string, object])[] = [
  [
    "writes a number",
    SetRangeValuesCommand.id,
    { ...ids, range: { ...area, endRow: 1, endColumn: 1 }, value: { v: 5 } },
  ],
  ["colours cells", SetStyleCommand.id, { ...ids, range: area, style: { type: "bg", value: { rgb: "#ffeecc" } } }],
  ["puts a row in", InsertRowByRangeCommand.id, { ...ids, range: row(1), direction: Direction.DOWN }],
  ["takes a row out", RemoveRowByRangeCommand.id, { ...ids, range: row(1) }],
  ["puts a column in", InsertColByRangeCommand.id, { ...ids, range: column(1), direction: Direction.RIGHT }],
  ["takes a column out", RemoveColByRangeCommand.id, { ...ids, range: column(0) }],
  ["moves cells", MoveRangeCommand.id, { ...ids, fromRange: area, toRange: { ...area, startRow: 701, endRow: 703 } }],
  ["moves rows", MoveRowsCommand.id, { ...ids, fromRange: row(1), toRange: row(20) }],
  ["merges cells", AddWorksheetMergeCommand.id, { ...ids, selections: [area], defaultMerge: true }],
  ["widens a column", SetWorksheetColWidthMutation.id, { ...ids, ranges: [column(1)], colWidth: 200 }],
  ["hides a row", SetRowHiddenCommand.id, { ...ids, ranges: [row(2)] }],
  ["freezes rows", SetFrozenCommand.id, { ...ids, startRow: 1, startColumn: -1, xSplit: 0, ySplit: 1 }],
  ["names a sheet", SetWorksheetNameCommand.id, { ...ids, name: "Renamed" }],
  ["colours a tab", SetTabColorCommand.id, { ...ids, value: "#aa0000" }],
  ["adds a sheet", InsertSheetCommand.id, { ...ids, sheet: { id: "three", name: "Three", cellData: cells() } }],
  ["copies a sheet", CopySheetCommand.id, ids],
  ["removes a sheet", RemoveSheetCommand.id, ids],
  ["hides a sheet", SetWorksheetHideCommand.id, { ...ids, subUnitId: "two" }],
  ["moves a sheet", SetWorksheetOrderCommand.id, { ...ids, order: 1 }],
  ["gives a name", SetDefinedNameCommand.id, { ...ids, id: "n", name: "Fills", formulaOrRefString: "One!$B$2:$B$3" }],
  [
    "makes a table",
    AddSheetTableCommand.id,
    { ...ids, name: "Pours", range: { ...area, startRow: 0, startColumn: 0 } },
  ],
  ["sets something in the pane", SetSettingsMutation.id, { ...ids, custom: { settings: "{}" } }],
];

/** What formulas give need not be kept: it comes again. */
const withoutResults = (piece: string) =>
  piece && JSON.stringify(JSON.parse(piece, (_, value) => (value?.f || value?.si ? { ...value, v: 0, t: 0 } : value)));

describe("what a mutation is said to change", () => {
  let univer: Univer;
  let injector: Injector;
  let changes: Change[];
  let stop: () => void;
  beforeEach(() => {
    univer = new Univer({ locale: LocaleType.EN_US, locales: { [LocaleType.EN_US]: {} } });
    univer.registerPlugin(UniverFormulaEnginePlugin);
    univer.registerPlugin(UniverSheetsPlugin);
    univer.registerPlugin(UniverSheetsFormulaPlugin);
    univer.registerPlugin(UniverSheetsTablePlugin);
    univer.createUnit(UniverInstanceType.UNIVER_SHEET, data());
    injector = univer.__getInjector();
    injector.get(ICommandService).registerCommand(SetSettingsMutation);
    changes = [];
    stop = onDataChange(injector, (unitId, change) => {
      expect(unitId).toBe("book");
      changes.push(change);
    });
  });
  afterEach(() => {
    stop();
    univer.dispose();
  });

  const book = () => injector.get(IUniverInstanceService).getUnit<Workbook>("book") as Workbook;
  const pieces = () => {
    const now = snapshotOf(injector, book());
    return new Map(slotsOf(now).map((slot) => [slot, withoutResults(pieceOf(now, slot))]));
  };
  const run = (id: string, params: object) => injector.get(ICommandService).executeCommand(id, params);
  /** The slots whose pieces have become others though no change spoke of them. */
  const unsaid = (before: ReadonlyMap<string, string>) => {
    const said = new Set(changes.flatMap(slotsOfChange));
    return [...pieces()]
      .filter(([slot, piece]) => piece !== before.get(slot))
      .map(([slot]) => slot)
      .filter((slot) => before.has(slot) && !isOfBook(slot) && !isAmong(said, slot));
  };

  it.each(DOINGS)(
    "is all that differs when somebody %s, and when that is undone and done again",
    async (_, id, params) => {
      const selected = { range: { ...row(1), rangeType: RANGE_TYPE.ROW }, primary: null, style: null };
      injector.get(SheetsSelectionsService).setSelections("book", "one", [selected]);
      const before = pieces();
      expect(await run(id, params)).toBe(true);
      expect(changes.some(({ isEdit }) => isEdit)).toBe(true);
      const after = pieces();
      expect([...after].some(([slot, piece]) => before.get(slot) !== piece) || after.size !== before.size).toBe(true);
      expect(unsaid(before)).toEqual([]);
      if (id === SetSettingsMutation.id || id === SetWorksheetColWidthMutation.id) return;
      await run(UndoCommand.id, {});
      await run(RedoCommand.id, {});
      expect(unsaid(before)).toEqual([]);
    },
  );

  it("is also a formula on another sheet that follows a row", async () => {
    await run(InsertRowByRangeCommand.id, { ...ids, range: row(1), direction: Direction.DOWN });
    await expect.poll(() => JSON.parse(pieces().get("cells/two/0") ?? "")[5][5].f).toBe("=One!B4+1");
    expect(new Set(changes.flatMap(slotsOfChange))).toContain("cells/two/0");
  });

  it("is one piece of cells for a number that is written", async () => {
    await run(SetRangeValuesCommand.id, { ...ids, range: { ...area, endRow: 1, endColumn: 1 }, value: { v: 5 } });
    expect(new Set(changes.flatMap(slotsOfChange))).toEqual(new Set(["sheet/one", "cells/one/0"]));
  });

  it("is nothing for what formulas give, for selections, and for texts in the making", () => {
    const mutation = (id: string, params: object, options?: IExecutionOptions) =>
      changeBy({ id, type: CommandType.MUTATION, params } as ICommandInfo, options);
    const values = { ...ids, cellValue: { 1: { 2: { v: 400 } } } };
    expect(mutation("sheet.mutation.set-range-values", values, { applyFormulaCalculationResult: true })).toBeNull();
    expect(mutation("formula.mutation.set-formula-data", { unitId: "book" })).toBeNull();
    expect(mutation("doc.mutation.rich-text-editing", { unitId: "book" })).toBeNull();
    expect(changeBy({ id: "sheet.operation.set-selections", type: CommandType.OPERATION, params: ids })).toBeNull();
  });

  it("is no edit when a row's height follows its text", () => {
    const params = { ...ids, rowsAutoHeightInfo: [] };
    const id = "sheet.mutation.set-worksheet-row-auto-height";
    expect(changeBy({ id, type: CommandType.MUTATION, params })).toEqual({
      sheets: ["one"],
      rows: "none",
      isEdit: false,
    });
  });

  it("names all cells of a sheet for a mutation that nobody here knows", () => {
    expect(changeBy({ id: "sheet.mutation.turn-round", type: CommandType.MUTATION, params: ids })).toEqual({
      sheets: ["one"],
      rows: "all",
      isEdit: true,
    });
  });
});
