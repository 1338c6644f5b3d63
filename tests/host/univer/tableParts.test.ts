import { ICommandService, IUniverInstanceService, type Workbook } from "@univerjs/core";
import { RemoveRowCommand, SetRangeValuesCommand } from "@univerjs/preset-sheets-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { lookAtMoved } from "../../../src/engine/moved";
import { problemsOf } from "../../../src/engine/problems";
import { readTypedFormulas } from "../../../src/engine/typing";
import type { Book, BookSheet } from "../../../src/file/book";
import { emptySheet, PLAIN_STYLE } from "../../../src/file/emptyBook";
import { toUniver } from "../../../src/host/univer/file/toUniver";
import { placedTables } from "../../../src/host/univer/placedTables";
import { UniverInNode } from "./univerInNode";

/** Columns F and up, from row 2 on, are for formulas. */
const FREE = { row: 1, column: 5 };

/** A table from B2 on, with a row of totals, and one without, from B12 on. */
function book(formulas: readonly string[] = []): Book {
  const cells: (string | number)[][] = [
    ["Vessel", "Quantity", "Fill (g)"],
    ["Tin", 10, 175],
    ["Jar", 3, 248],
    ["Cup", 25, 90],
    ["Bowl", 4, 600],
    ["Total", 42, 1113],
  ];
  const plain: (string | number)[][] = [["Lot"], [7], [8]];
  const at = (values: (string | number)[] | undefined) =>
    (values ?? []).map((value, i) => ({ column: 1 + i, value, style: 0 }));
  const rows = Array.from({ length: 20 }, (_, row) => ({
    row,
    cells: [
      ...at(cells[row - 1]),
      ...at(plain[row - 11]),
      ...formulas
        .filter((_, i) => FREE.row + i === row)
        .map((formula) => ({ column: FREE.column, value: 0, formula, style: 0 })),
    ],
  }));
  const table = (name: string, row: number, headings: readonly string[], count: number, hasTotals: boolean) => ({
    name,
    area: { row, column: 1, rows: count, columns: headings.length },
    hasHeadings: true,
    hasTotals,
    columns: headings.map((heading) => ({ heading })),
    filter: null,
    look: null,
    stripes: false,
  });
  const tables = [
    table("Batch", 1, ["Vessel", "Quantity", "Fill (g)"], 6, true),
    table("Wax_lots.2", 11, ["Lot"], 3, false),
  ];
  const sheet: BookSheet = { ...emptySheet("1", "Pour"), rows, tables };
  return { sheets: [sheet], styles: [PLAIN_STYLE], names: [], active: 0, from1904: false, settings: {} };
}

// ECMA-376 part 1, 18.17.5.2 (structured references): #Totals is the row of totals, #All has headings, data and totals,
// #This Row the row of the formula. What Excel shows where there is none is from memory.
const CASES: readonly (readonly [formula: string, value: unknown])[] = [
  ["=Batch[[#Totals],[Quantity]]", 42],
  ["=Batch[[#Totals],[Fill (g)]]", 1113],
  ["=COLUMNS(Batch[#Totals])*100+SUM(Batch[#Totals])", 300 + 42 + 1113],
  ["=SUM(Batch[#All])", 2 * (42 + 1113)],
  ["=COUNTA(Batch[[#All],[Vessel]])", 6],
  ["=COUNTA(Batch[[#All],[Vessel]:[Quantity]])", 12],
  ["=COUNTA(Batch[[#Headers],[Vessel]:[Fill (g)]])", 3],
  ["=SUM(Batch[#Data])", 42 + 1113],
  ["=SUM(Batch[[Quantity]:[Fill (g)]])", 42 + 1113],
  ["=SUM(Batch[Quantity])", 42],
  ["=COUNTA(Wax_lots.2[#All])", 3],
  ["=SUM(Wax_lots.2[Lot])", 15],
  ["=Wax_lots.2[[#Totals],[Lot]]", "#REF!"],
  ["=SUM(Batch[Qty])", "#NAME?"],
  ["=SUM(Batch[[#All],[Qty]])", "#NAME?"],
];

describe.each(["typed", "of a file"])("a reference to a part of a table in a formula %s", (way) => {
  let univer: UniverInNode;
  let workbook: Workbook;
  const formulas = CASES.map(([formula]) => formula);
  const original = book(way === "typed" ? [] : formulas);

  const enter = async (row: number, column: number, value: object) => {
    const range = { startRow: row, endRow: row, startColumn: column, endColumn: column };
    const ids = { unitId: workbook.getUnitId(), subUnitId: "1" };
    await univer.injector.get(ICommandService).executeCommand(SetRangeValuesCommand.id, { ...ids, value, range });
  };
  const value = (row: number, column: number) => workbook.getSheets()[0]?.getCellMatrix().getValue(row, column)?.v;

  beforeAll(async () => {
    univer = new UniverInNode();
    const { injector } = univer;
    readTypedFormulas(injector, (one) => placedTables(injector, one));
    workbook = await univer.open(toUniver(original, `parts-${way}`));
    lookAtMoved(injector);
    injector.get(IUniverInstanceService).focusUnit(workbook.getUnitId());
    if (way !== "typed") return;
    for (const [i, f] of formulas.entries()) await enter(FREE.row + i, FREE.column, { f });
    await univer.settled();
  });
  afterAll(() => univer.dispose());

  it.each(CASES.map((one, i) => [...one, i] as const))("%s is %s, and saved as it was", (formula, expected, i) => {
    expect(value(FREE.row + i, FREE.column)).toBe(expected);
    const saved = univer.book(workbook, original).sheets[0]?.rows.find(({ row }) => row === FREE.row + i);
    expect(saved?.cells.find(({ column }) => column === FREE.column)?.formula).toBe(formula);
  });

  it("is saved in the capitals of Excel, however it was typed", async () => {
    await enter(8, 8, { f: "=SUM(batch[#totals])+COUNTA(batch[[#all],[vessel]])" });
    await univer.settled();
    expect(value(8, 8)).toBe(42 + 1113 + 6);
    const saved = univer.book(workbook, original).sheets[0]?.rows.find(({ row }) => row === 8);
    const formula = saved?.cells.find(({ column }) => column === 8)?.formula;
    expect(formula).toBe("=SUM(Batch[#Totals])+COUNTA(Batch[[#All],[Vessel]])");
  });

  it("takes @ for the formula's row in the rows of the table alone", async () => {
    for (const row of [1, 3, 6, 8]) await enter(row, 7, { f: "=Batch[@Quantity]*2" });
    await univer.settled();
    const read = () => [1, 3, 6, 8].map((row) => value(row, 7));
    expect(read()).toEqual(["#VALUE!", 6, "#VALUE!", "#VALUE!"]);
    await enter(3, 2, { v: 5 });
    await univer.settled();
    expect(read()).toEqual(["#VALUE!", 10, "#VALUE!", "#VALUE!"]);
    await enter(3, 2, { v: 3 });
  });

  it("that has no answer says what to fix", async () => {
    const fixes = [
      ["=SUM(Batch[Qty])", 'Batch has no column "Qty"; write "Quantity", if you mean that'],
      ["=Batch[@Price]", 'Batch has no column "Price"'],
      ["=SUM(Batch[[#All],[Vesel]:[Fill (g)]])", 'Batch has no column "Vesel"; write "Vessel", if you mean that'],
      ["=Wax_lots.2[[#Totals],[Lot]]", "Wax_lots.2 has no row of totals"],
      ["=Batch[@Quantity]", "@ means the formula's own row, and this is no row of Batch; move the formula into one"],
    ] as const;
    for (const [i, [f]] of fixes.entries()) await enter(8 + i, 9, { f });
    await univer.settled();
    const problems = problemsOf(univer.injector, workbook, placedTables(univer.injector, workbook));
    expect(problems.filter(({ column }) => column === 9).map(({ message, own }) => [message, own])).toEqual(
      fixes.map(([, message]) => [message, true]),
    );
  });

  it("follows the row of totals", async () => {
    await enter(6, 2, { v: 50 });
    await univer.settled();
    expect(value(FREE.row, FREE.column)).toBe(50);
    const range = { startRow: 6, endRow: 6, startColumn: 0, endColumn: 25 };
    const ids = { unitId: workbook.getUnitId(), subUnitId: "1" };
    await univer.injector.get(ICommandService).executeCommand(RemoveRowCommand.id, { ...ids, range });
    await univer.settled();
    expect(value(FREE.row, FREE.column)).toBe("#REF!");
    expect(value(FREE.row + 4, FREE.column)).toBe(5);
  });
});
