import { Direction, type IRange, RANGE_TYPE, UndoCommand } from "@univerjs/core";
import {
  DeleteRangeMoveUpCommand,
  InsertColCommand,
  InsertRangeMoveDownCommand,
  InsertRowCommand,
  LexerTreeBuilder,
  MoveRangeCommand,
  MoveRowsCommand,
  RemoveColCommand,
  RemoveRowCommand,
  SheetsSelectionsService,
} from "@univerjs/preset-sheets-core";
import { describe, expect, it } from "vitest";
import { areaList, areaOf, areasOf, cellAddress } from "../../../src/file/addresses";
import type { Area, Book, Validation } from "../../../src/file/book";
import { emptyBook, emptySheet, PLAIN_STYLE } from "../../../src/file/emptyBook";
import { openFile } from "../../../src/file/openFile";
import { saveBook } from "../../../src/file/saveBook";
import { openedBooks } from "./openedBooks";

/** What rules read stays what they read when rows and columns come and go, as for the formulas of cells. */

const books = openedBooks();

const BATCH = "1";
const VESSELS = "2";

type Rule = readonly [areas: string, formula: string];
type Doing = readonly [id: string, params: object];

interface Placed {
  readonly row: number;
  readonly column: number;
  readonly formula: string;
}

/** What the formula of the first cell of a rule is in each cell of an area. */
const formulasIn = (area: Area, first: Pick<Area, "row" | "column">, formula: string): Placed[] =>
  Array.from({ length: area.rows * area.columns }, (_, i) => {
    const [row, column] = [area.row + Math.floor(i / area.columns), area.column + (i % area.columns)];
    const [right, down] = [column - first.column, row - first.row];
    return {
      row,
      column,
      formula: books.univer.injector.get(LexerTreeBuilder).moveFormulaRefOffset(formula, right, down),
    };
  });

/** A batch with rules, lists where their formula is but a reference; vessels on another sheet. */
function bookOf(rules: readonly Rule[], inCells = false): Book {
  const validations = rules.map(([areas, formula]): Validation => {
    const kind = /^=[^(]+$/.test(formula) ? "list" : "custom";
    const rest = { operator: "between", allowsBlank: true, showsList: true, onWrong: "warning" } as const;
    return { areas: areasOf(areas), kind, formulas: [formula], ...rest };
  });
  const all = inCells
    ? rules.flatMap(([areas, formula]) => areasOf(areas).flatMap((area) => formulasIn(area, area, formula)))
    : [];
  const rows = [...new Set(all.map(({ row }) => row))].map((row) => ({
    row,
    cells: all.filter((one) => one.row === row).map(({ column, formula }) => ({ column, value: 0, formula, style: 0 })),
  }));
  const batch = { ...emptySheet(BATCH, "Batch"), validations, rows };
  return { ...emptyBook(), sheets: [batch, emptySheet(VESSELS, "Vessels")], styles: [PLAIN_STYLE] };
}

const range = (text: string): IRange => {
  const { row, column, rows, columns } = areaOf(text) as Area;
  return { startRow: row, endRow: row + rows - 1, startColumn: column, endColumn: column + columns - 1 };
};

const rowsIn = (rows: string, direction = Direction.UP, subUnitId = BATCH): Doing => [
  InsertRowCommand.id,
  { subUnitId, range: { ...range(rows), startColumn: 0, endColumn: 99 }, direction },
];
const columnsIn = (columns: string): Doing => [
  InsertColCommand.id,
  { range: { ...range(columns), startRow: 0, endRow: 199 }, direction: Direction.LEFT },
];
const moved = (from: string, to: string, toSubUnitId = BATCH): Doing => [
  MoveRangeCommand.id,
  { fromRange: range(from), fromSubUnitId: BATCH, toRange: range(to), toSubUnitId },
];
const rowsOut = (rows: string): Doing => [RemoveRowCommand.id, { range: range(rows) }];

/** The rules and the formulas of cells in what is saved after something was done, and after that was undone. */
async function saved(book: Book, [id, params]: Doing) {
  const workbook = await books.open(book);
  if (id === MoveRowsCommand.id) {
    const selected = { range: { ...range("12:12"), rangeType: RANGE_TYPE.ROW }, primary: null, style: null };
    books.univer.injector.get(SheetsSelectionsService).setSelections(workbook.getUnitId(), BATCH, [selected]);
  }
  await books.does(workbook, id, params);
  const done = inFile(books.univer.book(workbook, book));
  await books.does(workbook, UndoCommand.id);
  const undone = inFile(books.univer.book(workbook, book));
  books.univer.close(workbook);
  return { ...done, undone: undone.rules };
}

function inFile(book: Book) {
  const sheet = openFile(saveBook(null, book).bytes, "fixed.xlsx").book.sheets[0];
  return {
    rules: (sheet?.validations ?? []).map(({ areas, formulas }): Rule => [areaList(areas), formulas[0] ?? ""]),
    cells: (sheet?.rows ?? []).flatMap(({ row, cells }) =>
      cells.flatMap(({ column, formula }): Placed[] => (formula ? [{ row, column, formula }] : [])),
    ),
  };
}

describe("a list of cells", () => {
  it.each<[string, string, Doing, string]>([
    ["moves with fixed cells", "=$A$12:$A$19", rowsIn("11:12"), "=$A$14:$A$21"],
    ["grows by rows inside", "=A12:A19", rowsIn("15:16"), "=A12:A21"],
    ["grows by rows inside of fixed cells", "=$A$12:$A$19", rowsIn("15:16"), "=$A$12:$A$21"],
    ["stays below", "=$A$12:$A$19", rowsIn("20:21"), "=$A$12:$A$19"],
    ["shrinks by rows that go", "=$A$12:$A$19", rowsOut("18:25"), "=$A$12:$A$17"],
    ["is lost with all of its cells", "=$A$12:$A$19", rowsOut("12:19"), "=#REF!"],
    ["moves on another sheet", "=Vessels!$A$5:$A$20", rowsIn("2:3", Direction.UP, VESSELS), "=Vessels!$A$7:$A$22"],
    ["grows on another sheet", "=Vessels!$A$5:$A$20", rowsIn("9:9", Direction.DOWN, VESSELS), "=Vessels!$A$5:$A$21"],
    ["stays on another sheet", "=Vessels!$A$5:$A$20", rowsIn("9:9"), "=Vessels!$A$5:$A$20"],
  ])("%s", async (_, formula, doing, then) => {
    const { rules, undone } = await saved(bookOf([["C2:C5", formula]]), doing);
    expect(rules).toEqual([["C2:C5", then]]);
    expect(undone).toEqual([["C2:C5", formula]]);
  });
});

describe("a formula for each cell of an area", () => {
  it.each<[string, Rule, Doing, Rule[]]>([
    ["its own cell, rows above", ["A2:A10", "=(A2>5)"], rowsIn("1:2"), [["A4:A12", "=(A4>5)"]]],
    ["its own cell, rows inside", ["A2:A10", "=(A2>5)"], rowsIn("5:6"), [["A2:A12", "=(A2>5)"]]],
    ["its own cell, rows right above", ["A2:A10", "=(A2>5)"], rowsIn("2:3"), [["A2:A12", "=(A2>5)"]]],
    ["its own cell, first rows go", ["A2:A10", "=(A2>5)"], rowsOut("2:3"), [["A2:A8", "=(A2>5)"]]],
    ["its own cell, rows below", ["A2:A10", "=(A2>5)"], rowsIn("12:13"), [["A2:A10", "=(A2>5)"]]],
    ["its row, a column before", ["D2:D10", "=($B2>C2)"], columnsIn("C:C"), [["E2:E10", "=($B2>D2)"]]],
    [
      "its row and a fixed cell above, rows between",
      ["D5:D10", "=(C5>$B$2)"],
      rowsIn("4:4"),
      [["D6:D11", "=(C6>$B$2)"]],
    ],
    [
      "its row and a fixed cell below, rows between",
      ["D2:D6", "=(C2>$B$12)"],
      rowsIn("9:10"),
      [["D2:D6", "=(C2>$B$14)"]],
    ],
    [
      "its row and a fixed cell beside, rows between",
      ["D2:D6", "=(C2>$B$5)"],
      rowsIn("4:4"),
      [["D2:D7", "=(C2>$B$6)"]],
    ],
    ["its row and a fixed row, rows between", ["D2:E6", "=(C2>C$5)"], rowsIn("4:4"), [["D2:E7", "=(C2>C$6)"]]],
    [
      "its own column, rows inside",
      ["A2:A10", "=(COUNTIF($A$2:$A$10,A2)>1)"],
      rowsIn("5:6"),
      [["A2:A12", "=(COUNTIF($A$2:$A$12,A2)>1)"]],
    ],
    [
      "its own column half fixed",
      ["A2:B10", "=(COUNTIF(A$2:A$10,A2)>1)"],
      rowsIn("5:6"),
      [["A2:B12", "=(COUNTIF(A$2:A$12,A2)>1)"]],
    ],
    [
      "all down to its row",
      ["A2:A10", "=(COUNTIF(A$2:A2,A2)>1)"],
      rowsIn("1:1"),
      [["A3:A11", "=(COUNTIF(A$3:A3,A3)>1)"]],
    ],
    ["the row above, rows above", ["A3:A10", "=(A3>A2)"], rowsIn("1:1"), [["A4:A11", "=(A4>A3)"]]],
    ["two areas", ["A2:A4 C8:C10", "=(A2>$B$6)"], rowsIn("6:6"), [["A2:A4 C9:C11", "=(A2>$B$7)"]]],
    [
      "other vessels, rows there",
      ["A2:A10", "=(COUNTIF(Vessels!$A$5:$A$20,A2)=0)"],
      rowsIn("2:3", Direction.UP, VESSELS),
      [["A2:A10", "=(COUNTIF(Vessels!$A$7:$A$22,A2)=0)"]],
    ],
    ["a fixed cell that goes", ["A2:A10", "=(A2>$B$12)"], rowsOut("12:12"), [["A2:A10", "=(A2>#REF!)"]]],
    ["a fixed cell that goes beside it", ["A2:A10", "=(A2>$B$5)"], rowsOut("5:5"), [["A2:A9", "=(A2>#REF!)"]]],
    [
      "a fixed cell whose column goes",
      ["D2:D10", "=(D2>$B$5)"],
      [RemoveColCommand.id, { range: range("B:B") }],
      [["C2:C10", "=(C2>#REF!)"]],
    ],
    [
      "a fixed cell that is cut and put elsewhere",
      ["D2:D10", "=(D2>$B$5)"],
      moved("B5", "F20"),
      [["D2:D10", "=(D2>$F$20)"]],
    ],
    [
      "words that look like cells",
      ["D2:D10", '=(D2&"B12">"$B$12")'],
      rowsIn("1:1"),
      [["D3:D11", '=(D3&"B12">"$B$12")']],
    ],
  ])("reads %s", async (_, rule, doing, then) => {
    const { rules, undone } = await saved(bookOf([rule]), doing);
    expect(rules).toEqual(then);
    expect(undone).toEqual([rule]);
  });
});

const REFERENCES = [
  ...["$B$12", "B12", "B$12", "$B12", "$B$12:$C$19", "B12:C19", "B$12:C$19", "$B$12:B12", "$B:$B", "B:C", "$2:$3"],
  ...["Vessels!$B$12", "Vessels!B12:B19"],
];
/** The cells of the rules, one column for each reference. */
const FIRST = { row: 9, column: 24 };
const ROWS = 7;

describe("a rule means for each of its cells what a formula in that cell means", () => {
  it.each<[string, Doing]>([
    ["rows above", rowsIn("3:4")],
    ["rows right above", rowsIn("12:12")],
    ["rows inside", rowsIn("14:17")],
    ["rows right below", rowsIn("20:20", Direction.DOWN)],
    ["rows on the other sheet", rowsIn("12:13", Direction.UP, VESSELS)],
    ["columns", columnsIn("A:A")],
    ["columns inside", columnsIn("C:C")],
    ["rows that go", rowsOut("12:13")],
    ["rows that go inside", rowsOut("15:16")],
    ["columns that go", [RemoveColCommand.id, { range: range("B:B") }]],
    ["cells put in", [InsertRangeMoveDownCommand.id, { range: range("B3:C4") }]],
    ["cells that go", [DeleteRangeMoveUpCommand.id, { range: range("B10:C13") }]],
    ["cells that are moved", moved("B10:C20", "F10:G20")],
    ["cells that are moved over them", moved("F10:G20", "B10:C20")],
    ["rows that are moved", [MoveRowsCommand.id, { fromRange: range("12:12"), toRange: range("16:16") }]],
  ])("after %s", async (_, doing) => {
    const rules = REFERENCES.map((reference, i): Rule => {
      const area = { ...FIRST, column: FIRST.column + i, rows: ROWS, columns: 1 };
      return [areaList([area]), `=SUM(${reference})`];
    });
    const now = await saved(bookOf(rules, true), doing);
    expect(new Set(now.undone)).toEqual(new Set(rules));
    const byRules = now.rules.flatMap(([areas, formula]) => {
      const [first] = areasOf(areas);
      return first ? areasOf(areas).flatMap((area) => formulasIn(area, first, formula)) : [];
    });
    // Cells that came have a rule, but no formula.
    const said = (all: readonly Placed[]) =>
      all.map(({ row, column, formula }) => `${cellAddress(row, column)} ${formula}`);
    expect(said(now.cells).filter((one) => !said(byRules).includes(one))).toEqual([]);
    expect(now.cells.length).toBeGreaterThan(REFERENCES.length * (ROWS - 3));
  });
});
