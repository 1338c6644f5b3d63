import { ICommandService, IUniverInstanceService, RedoCommand, UndoCommand, type Workbook } from "@univerjs/core";
import { SetRangeValuesCommand, SetRowHiddenCommand, SetRowVisibleMutation } from "@univerjs/preset-sheets-core";
import { SetSheetTableFilterCommand } from "@univerjs/preset-sheets-table";
import {
  RemoveSheetFilterCommand,
  SetSheetFilterRangeCommand,
  SetSheetsFilterCriteriaCommand,
} from "@univerjs/sheets-filter";
import { afterEach, describe, expect, it } from "vitest";
import type { Book, BookSheet } from "../../../src/file/book";
import { emptySheet, PLAIN_STYLE } from "../../../src/file/emptyBook";
import { toUniver } from "../../../src/host/univer/file/toUniver";
import { knowFilteredRows } from "../../../src/host/univer/filteredRows";
import { followHidden } from "../../../src/host/univer/followHidden";
import { UniverInNode } from "./univerInNode";
import "../../../src/host/univer/editing/filterCorrections";
import "../../../src/host/univer/editing/filterUndo";

const QUANTITIES = [10, 3, 25, 4];

/** Beside the table, by rows, in column D; D4 follows from a formula that looks at hidden rows. */
const FORMULAS = {
  "SUBTOTAL(109,B2:B5)": 0,
  "SUBTOTAL(9,B2:B5)": 1,
  "AGGREGATE(9,5,B2:B5)": 2,
  "AGGREGATE(9,4,B2:B5)": 3,
  "AGGREGATE(14,3,B2:B5,3)": 4,
  "D1*2": 5,
  "SUM(B2:B5)": 6,
  "IF(TRUE,Shown,0)": 7,
} as const;

/** A batch with a row of totals, not in the first sheet, as a file holds it. */
function batch(isTable: boolean): Book {
  const area = { row: 0, column: 0, rows: 6, columns: 2 };
  const cells: (string | number)[][] = [["Vessel", "Quantity"], ...QUANTITIES.map((n, i) => [`Jar ${i + 1}`, n])];
  const total = { column: 1, value: 42, formula: "=SUBTOTAL(109,B2:B5)", style: 0 };
  const formulas = Object.entries(FORMULAS).map(([formula, row]) => ({
    row,
    cell: { column: 3, value: 0, formula: `=${formula}`, style: 0 },
  }));
  const rows = Array.from({ length: 8 }, (_, row) => ({
    row,
    cells: [
      ...(cells[row] ?? []).map((value, column) => ({ column, value, style: 0 })),
      ...(row === 5 ? [{ column: 0, value: "Total", style: 0 }, total] : []),
      ...formulas.filter((one) => one.row === row).map(({ cell }) => cell),
    ],
  }));
  const table = {
    name: "Batch",
    area,
    hasHeadings: true,
    hasTotals: true,
    columns: [{ heading: "Vessel" }, { heading: "Quantity" }],
    filter: { area: { ...area, rows: 5 }, columns: [] },
    look: null,
    stripes: false,
  };
  const sheet: BookSheet = { ...emptySheet("2", "Batch"), rows, ...(isTable && { tables: [table] }) };
  const names = [{ name: "Shown", formula: "=SUBTOTAL(9,Batch!$B$2:$B$5)" }] as unknown as Book["names"];
  const sheets = [emptySheet("1", "Vessels"), sheet];
  return { sheets, styles: [PLAIN_STYLE], names, active: 1, from1904: false, settings: {} };
}

// OpenFormula 1.3, 6.16.66 SUBTOTAL: rows that a filter hides are never counted, those hidden by hand from 101 on.
// AGGREGATE's options as Microsoft lists them: 5 ignores hidden rows, 4 nothing, 3 hidden rows and errors.
const ALL = { total: 42, beside: [42, 42, 42, 42, 4, 84, 42, 42] };
const FILTERED = { total: 39, beside: [39, 39, 39, 42, 4, 78, 42, 39] };
const BY_HAND = { total: 39, beside: [39, 42, 39, 42, 4, 78, 42, 42] };

describe("totals of what is shown", () => {
  let univer: UniverInNode;
  let workbook: Workbook;
  let book: Book;
  let count = 0;
  afterEach(() => univer.dispose());

  const open = async (isTable: boolean) => {
    univer = new UniverInNode();
    book = batch(isTable);
    workbook = await univer.open(toUniver(book, `hidden${count++}`));
    knowFilteredRows(univer.injector);
    followHidden(univer.injector);
    univer.injector.get(IUniverInstanceService).focusUnit(workbook.getUnitId());
    expect(shown()).toEqual(ALL);
  };
  const run = async (id: string, params: object = {}) => {
    const ids = { unitId: workbook.getUnitId(), subUnitId: "2" };
    expect(await univer.injector.get(ICommandService).executeCommand(id, { ...ids, ...params })).toBe(true);
    await univer.settled();
  };
  const filterTable = (values?: readonly string[]) =>
    run(SetSheetTableFilterCommand.id, {
      tableId: "Batch",
      column: 1,
      tableFilter: values && { filterType: "manual", values },
    });
  const type = (row: number, v: number) => {
    const range = { startRow: row, endRow: row, startColumn: 1, endColumn: 1 };
    return run(SetRangeValuesCommand.id, { value: { v }, range });
  };
  const value = (row: number, column: number) =>
    workbook.getSheetBySheetId("2")?.getCellMatrix().getValue(row, column)?.v;
  const shown = () => ({ total: value(5, 1), beside: Object.values(FORMULAS).map((row) => value(row, 3)) });

  it("follow the filter of a table, as it is set, changed, cleared, and when that is taken back", async () => {
    await open(true);
    await filterTable(["10", "25", "4"]);
    expect(shown()).toEqual(FILTERED);
    const saved = univer.book(workbook, book).sheets[1]?.rows[5]?.cells[1];
    expect(saved?.value).toBe(39);
    await run(UndoCommand.id);
    expect(shown()).toEqual(ALL);
    await run(RedoCommand.id);
    expect(shown()).toEqual(FILTERED);
    await filterTable(["10", "25"]);
    expect(shown().total).toBe(35);
    await run(UndoCommand.id);
    expect(shown()).toEqual(FILTERED);
    await type(3, 26);
    expect(shown().total).toBe(40);
    await filterTable();
    expect(shown().total).toBe(43);
    expect(univer.book(workbook, book).sheets[1]?.rows[5]?.cells[1]?.value).toBe(43);
  });

  it("follow the filter of a sheet", async () => {
    await open(false);
    const range = { startRow: 0, endRow: 4, startColumn: 0, endColumn: 1 };
    await run(SetSheetFilterRangeCommand.id, { range });
    const criteria = { colId: 1, filters: { filters: ["10", "25", "4"] } };
    await run(SetSheetsFilterCriteriaCommand.id, { col: 1, criteria });
    expect(shown()).toEqual(FILTERED);
    await run(UndoCommand.id);
    expect(shown()).toEqual(ALL);
    await run(RedoCommand.id);
    expect(shown()).toEqual(FILTERED);
    await run(RemoveSheetFilterCommand.id);
    expect(shown()).toEqual(ALL);
  });

  it("follow what is hidden by hand", async () => {
    await open(true);
    const ranges = [{ startRow: 2, endRow: 2, startColumn: 0, endColumn: 25 }];
    await run(SetRowHiddenCommand.id, { ranges });
    expect(shown()).toEqual(BY_HAND);
    await run(UndoCommand.id);
    expect(shown()).toEqual(ALL);
    await run(RedoCommand.id);
    expect(shown()).toEqual(BY_HAND);
    await run(SetRowVisibleMutation.id, { ranges });
    expect(shown()).toEqual(ALL);
  });
});
