import {
  Direction,
  ICommandService,
  IUniverInstanceService,
  RedoCommand,
  sequenceExecute,
  UndoCommand,
  UniverInstanceType,
} from "@univerjs/core";
import {
  InsertRowCommand,
  InsertRowMutation,
  RemoveRowCommand,
  SetRangeValuesMutation,
} from "@univerjs/preset-sheets-core";
import { SortRangeCommand, UniverSheetsSortPlugin } from "@univerjs/preset-sheets-sort";
import { TableManager } from "@univerjs/preset-sheets-table";
import { describe, expect, it } from "vitest";
import type { Book } from "../../../src/file/book";
import { growTables, growToTotals } from "../../../src/host/univer/editing/growTables";
import { refuseSorting, sortWhole } from "../../../src/host/univer/editing/sorting";
import { toUniver } from "../../../src/host/univer/file/toUniver";
import { withTotalsMarked } from "../../../src/host/univer/totals";
import { workbookData } from "../../../src/host/univer/workbook";
import { everythingBook } from "./everythingBook";
import { UniverInNode } from "./univerInNode";

/** A function that fills the cells below it, such as one of a list of pots. */
const SPILLING = {
  script: 'CustomFunctions.associate("SPLIT", () => [[30], [20], [10]]);',
  metadata: JSON.stringify({ functions: [{ id: "SPLIT", name: "SPLIT", parameters: [] }] }),
};

const run = (univer: UniverInNode, id: string, params: object) =>
  univer.injector.get(ICommandService).executeCommand(id, params);

describe("sorting", () => {
  it("rows over which a function of ours spills is refused in words, and nothing moves", async () => {
    const univer = new UniverInNode(SPILLING);
    univer.univer.registerPlugin(UniverSheetsSortPlugin);
    const cells = [3, 2, 1].map((number, row) => ({ row, column: 0, content: { number } }));
    const formula = { row: 0, column: 1, content: { formula: "=POUR.SPLIT()" } };
    const workbook = await univer.open(
      workbookData("spilled", [{ name: "Pots", widths: [], cells: [...cells, formula] }]),
    );
    const sheet = workbook.getActiveSheet();
    const shown = () => [0, 1, 2].map((row) => [0, 1].map((column) => sheet.getCell(row, column)?.v ?? null));
    expect(shown()).toEqual([
      [3, 30],
      [2, 20],
      [1, 10],
    ]);
    const said: string[] = [];
    refuseSorting(univer.injector, (words) => said.push(words));
    // The formula's own cell is not among them, some of those that it fills are.
    const range = { startRow: 1, endRow: 2, startColumn: 0, endColumn: 1 };
    const ids = { unitId: workbook.getUnitId(), subUnitId: sheet.getSheetId() };
    const sort = { ...ids, range, orderRules: [{ colIndex: 0, type: "asc" }], hasTitle: false };
    expect(await run(univer, SortRangeCommand.id, sort)).toBe(false);
    expect(said).toEqual([
      "Not sorted: the formula in B1 fills several cells of these rows. Leave them out of what is sorted.",
    ]);
    expect(shown()).toEqual([
      [3, 30],
      [2, 20],
      [1, 10],
    ]);
    // Beside them it sorts.
    expect(await run(univer, SortRangeCommand.id, { ...sort, range: { ...range, endColumn: 0 } })).toBe(true);
    expect(shown().map(([first]) => first)).toEqual([3, 1, 2]);
    univer.dispose();
  });

  it("rows with notes and links takes these along, back and forth", async () => {
    const cell = (row: number, value: string) => ({ row, column: 0, value, style: 0 });
    const link = (row: number) => ({
      area: { row, column: 0, rows: 1, columns: 1 },
      address: `https://example.com/${row}`,
      place: null,
      tip: null,
    });
    const everything = everythingBook();
    const [like] = everything.sheets;
    if (!like) throw new Error("there is no sheet");
    const book: Book = {
      ...everything,
      names: [],
      sheets: [
        {
          ...like,
          rows: ["Moss", "Fig", "Cedar"].map((value, row) => ({
            row,
            cells: [cell(row, value)],
          })),
          merges: [],
          tables: [],
          filter: null,
          validations: [],
          conditions: [],
          notes: [0, 2].map((row) => ({ row, column: 0, text: `note ${row}`, author: "Maker" })),
          links: [link(0), link(1)],
        },
      ],
    };
    const univer = new UniverInNode();
    univer.univer.registerPlugin(UniverSheetsSortPlugin);
    const workbook = await univer.open(toUniver(book, "noted"));
    univer.injector.get(IUniverInstanceService).focusUnit(workbook.getUnitId());
    sortWhole(univer.injector);
    const found = () => {
      const [sheet] = univer.book(workbook, book).sheets;
      return {
        texts: sheet?.rows.flatMap(({ cells }) => cells.map(({ value }) => value)),
        notes: sheet?.notes.map(({ row, text, author }) => [row, text, author]),
        links: sheet?.links.map(({ area, address }) => [area.row, address]),
      };
    };
    const before = found();
    expect(before.notes).toEqual([
      [0, "note 0", "Maker"],
      [2, "note 2", "Maker"],
    ]);
    const ids = { unitId: workbook.getUnitId(), subUnitId: workbook.getActiveSheet().getSheetId() };
    const range = { startRow: 0, endRow: 2, startColumn: 0, endColumn: 0 };
    await run(univer, SortRangeCommand.id, {
      ...ids,
      range,
      orderRules: [{ colIndex: 0, type: "asc" }],
      hasTitle: false,
    });
    const sorted = {
      texts: ["Cedar", "Fig", "Moss"],
      notes: [
        [2, "note 0", "Maker"],
        [0, "note 2", "Maker"],
      ],
      links: [
        [2, "https://example.com/0"],
        [1, "https://example.com/1"],
      ],
    };
    expect(found()).toEqual(sorted);
    await run(univer, UndoCommand.id, {});
    expect(found()).toEqual(before);
    await run(univer, RedoCommand.id, {});
    expect(found()).toEqual(sorted);
    univer.dispose();
  });
});

describe("a table of a file with a row of totals", () => {
  it("does not grow over it, though it is blank", async () => {
    const univer = new UniverInNode();
    const workbook = await univer.open(toUniver(everythingBook(), "totals"));
    const ids = { unitId: workbook.getUnitId(), subUnitId: workbook.getActiveSheet().getSheetId() };
    const table = univer.injector
      .get(TableManager)
      .getTablesBySubunitId(ids.unitId, ids.subUnitId)
      .find((one) => one.getDisplayName() === "Jars");
    const below = (table?.getRange().endRow ?? 0) + 1;
    const write = async (cell: object | null) => {
      const cellValue = {
        [below]: Object.fromEntries([0, 1, 2, 3].map((column) => [column, column === 0 ? cell : null])),
      };
      await run(univer, SetRangeValuesMutation.id, { ...ids, cellValue });
      return { unitID: ids.unitId, redoMutations: [{ id: SetRangeValuesMutation.id, params: { ...ids, cellValue } }] };
    };
    await write(null);
    const edit = { ...(await write({ v: "Wide bowl" })), undoMutations: [] };
    expect(growTables(univer.injector, edit)).toBeNull();
    // It would over a row put in above the totals, or without them.
    const put = { startRow: below, endRow: below, startColumn: 0, endColumn: 30 };
    await run(univer, InsertRowCommand.id, { ...ids, range: put, direction: Direction.UP });
    await write(null);
    await write({ v: "Wide bowl" });
    expect(growTables(univer.injector, edit)).not.toBeNull();
    await run(univer, RemoveRowCommand.id, { ...ids, range: put });
    expect(growTables(univer.injector, edit)).toBeNull();
    table?.setTableMeta({});
    expect(growTables(univer.injector, edit)).not.toBeNull();
    univer.dispose();
  });

  it("takes a row in that was put in right above its totals, which stay its own", async () => {
    const univer = new UniverInNode();
    const book = everythingBook();
    const workbook = await univer.open(toUniver(book, "above-totals"));
    const ids = { unitId: workbook.getUnitId(), subUnitId: workbook.getActiveSheet().getSheetId() };
    const jars = () => univer.book(workbook, book).sheets[0]?.tables[0];
    const before = jars();
    const put = { startRow: 3, endRow: 3, startColumn: 0, endColumn: 30 };
    await run(univer, InsertRowCommand.id, { ...ids, range: put, direction: Direction.UP });
    const inserted = { id: InsertRowMutation.id, params: { ...ids, range: put } };
    const more = growToTotals(univer.injector, { unitID: ids.unitId, redoMutations: [inserted], undoMutations: [] });
    const commands = univer.injector.get(ICommandService);
    sequenceExecute([...(more?.redos ?? [])], commands);
    expect(jars()).toMatchObject({ hasTotals: true, area: { row: 0, rows: (before?.area.rows ?? 0) + 1 } });
    // The column's formula came along.
    expect(workbook.getActiveSheet().getCellRaw(3, 2)?.f).toMatch(/^=ROUND\(/);
    sequenceExecute([...(more?.undos ?? [])], commands);
    await run(univer, RemoveRowCommand.id, { ...ids, range: put });
    expect(jars()).toEqual(before);
    univer.dispose();
  });

  it("is left alone by the steps of what is being typed", () => {
    const univer = new UniverInNode();
    univer.univer.createUnit(UniverInstanceType.UNIVER_DOC, { id: "typed" });
    const edit = { unitID: "typed", redoMutations: [], undoMutations: [] };
    expect(growToTotals(univer.injector, edit)).toBeNull();
    univer.dispose();
  });

  it("has the row still in a workbook that was kept before such rows were marked", () => {
    const opened = toUniver(everythingBook(), "kept");
    const [id = ""] = opened.sheetOrder;
    const sheet = opened.sheets[id] ?? {};
    const totals = 3;
    const without = (rowData: typeof sheet.rowData, cellData = sheet.cellData) => ({
      ...opened,
      sheets: { ...opened.sheets, [id]: { ...sheet, rowData, cellData } },
    });
    const { custom, ...row } = sheet.rowData?.[totals] ?? {};
    expect(custom).toEqual({ totals: true });
    const old = without({ ...sheet.rowData, [totals]: row });
    expect(withTotalsMarked(old).sheets[id]?.rowData).toEqual(sheet.rowData);
    expect(withTotalsMarked(opened)).toEqual(opened);
    // What stands where the row was deleted is not taken for it.
    const other = without(old.sheets[id]?.rowData, { ...sheet.cellData, [totals]: { 0: { v: "Wide bowl" } } });
    expect(withTotalsMarked(other)).toEqual(other);
  });
});
