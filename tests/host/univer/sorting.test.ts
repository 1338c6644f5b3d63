import { UndoCommand } from "@univerjs/core";
import { LexerTreeBuilder } from "@univerjs/engine-formula";
import { AddWorksheetMergeMutation } from "@univerjs/preset-sheets-core";
import { SortRangeCommand, UniverSheetsSortPlugin } from "@univerjs/preset-sheets-sort";
import { describe, expect, it } from "vitest";
import { addOrder } from "../../../src/host/univer/editing/order";
import { movedWithRow, refuseSorting, sortWhole } from "../../../src/host/univer/editing/sorting";
import type { Cell, Content } from "../../../src/sheet/sheet";
import { Headless } from "./headless";

describe("a formula whose row is sorted", () => {
  const lexer = new LexerTreeBuilder();
  const sorted = { startRow: 4, endRow: 9 };
  it.each([
    ["=C6*D6", "=C9*D9"],
    ["=C6*$D6", "=C9*$D9"],
    ["='My pours'!C6*2", "='My pours'!C9*2"],
    ["=C6*$B$1", "=C6*$B$1".replace("C6", "C9")],
    ["=C6*B1", "=C9*B1"],
    ["=C6*Costs!C6", "=C9*Costs!C6"],
    ["=C6/SUM(C5:C10)", "=C9/SUM(C5:C10)"],
    ["=SUM(C$5:C6)", "=SUM(C$5:C9)"],
    ["=E5+C6", "=E8+C9"],
    ["=Pours[[#This Row],[Fill]]*C6", "=Pours[[#This Row],[Fill]]*C9"],
    ['=IF(C6="C6","",POUR.FILLWEIGHT(C6))', '=IF(C9="C6","",POUR.FILLWEIGHT(C9))'],
  ])("%s goes three rows down as %s", (formula, moved) => {
    expect(movedWithRow(lexer, formula, "My pours", 3, sorted)).toBe(moved);
  });
});

const content = (value: string | number): Content =>
  typeof value === "number" ? { number: value } : value.startsWith("=") ? { formula: value } : { text: value };

describe("sorting a table", () => {
  const said: string[] = [];
  const open = (rows: (string | number | null)[][]): Headless => {
    const all = [["Vessel", "Water", "Double"], ...rows];
    const cells: Cell[] = all.flatMap((values, row) =>
      values.flatMap((value, column): Cell[] => (value === null ? [] : [{ row, column, content: content(value) }])),
    );
    const tables = [{ name: "Vessels", row: 0, column: 0, headings: ["Vessel", "Water", "Double"], rows: rows.length }];
    const page = new Headless([{ name: "Vessels", widths: [], cells, tables }], [UniverSheetsSortPlugin]);
    sortWhole(page.injector);
    said.length = 0;
    refuseSorting(page.injector, (words) => said.push(words));
    addOrder(page.injector);
    return page;
  };
  const sort = (page: Headless, column: number, type: "asc" | "desc", rows: number) =>
    page.run(SortRangeCommand.id, {
      range: { startRow: 1, endRow: rows, startColumn: 0, endColumn: 2 },
      orderRules: [{ colIndex: column, type }],
      hasTitle: false,
    });

  it("moves its rows, keeps each formula in its row, and goes back by one press", async () => {
    const rows = [
      ["Tin", 120, "=B2*2"],
      ["Jar", 210, "=B3*2"],
      ["Cup", 80, "=B4*2"],
    ];
    const page = open(rows);
    expect(await sort(page, 1, "asc", 3)).toBe(true);
    expect(page.cells(1, 0, 3, 3)).toEqual([
      ["Cup", 80, "=B2*2"],
      ["Tin", 120, "=B3*2"],
      ["Jar", 210, "=B4*2"],
    ]);
    await page.run(UndoCommand.id, {});
    expect(page.cells(1, 0, 3, 3)).toEqual(rows);
  });

  // LibreOffice 7.4.7 sorts the same cells into the same order, up and down.
  it("puts numbers before texts, texts without regard to capitals, and blanks last either way", async () => {
    const rows = ["tin", 12, "Cup", null, "007", 2.5, "cup 10", "-a"].map((value) => [value, 1, 1]);
    const page = open(rows);
    await sort(page, 0, "asc", 8);
    const up = page.cells(1, 0, 8, 1).flat();
    expect([up.slice(0, 2), up.at(-1)]).toEqual([[2.5, 12], null]);
    expect(up.slice(2, -1)).toEqual(["-a", "007", "Cup", "cup 10", "tin"]);
    await sort(page, 0, "desc", 8);
    expect(page.cells(1, 0, 8, 1).flat()).toEqual(["tin", "cup 10", "Cup", "007", "-a", 12, 2.5, null]);
  });

  it("with merged cells is refused in words, and nothing moves", async () => {
    const page = open([
      ["Tin", 2, 1],
      ["Jar", 1, 1],
    ]);
    await page.run(AddWorksheetMergeMutation.id, {
      ranges: [{ startRow: 2, endRow: 2, startColumn: 0, endColumn: 1 }],
    });
    expect(await sort(page, 1, "asc", 2)).toBe(false);
    expect(said).toEqual(["Not sorted: A3 is merged with other cells. Separate them first."]);
    expect(page.cell(1, 0)).toBe("Tin");
  });
});
