import { describe, expect, it } from "vitest";
import type { Book, BookSheet } from "../../../src/file/book";
import { openFile } from "../../../src/file/openFile";
import { saveBook } from "../../../src/file/saveBook";
import { richWorkbook } from "../richWorkbook";

describe("what a file cannot carry is said", () => {
  const original = richWorkbook();
  const { book } = openFile(original, "rich.xlsx");
  const saidOf = (name: string, change: (sheet: BookSheet) => BookSheet) => {
    const now: Book = { ...book, sheets: book.sheets.map((one) => (one.name === name ? change(one) : one)) };
    return saveBook(original, now).lost.map(({ sheet, what }) => `${sheet}: ${what}`);
  };

  it("of a formula that looks into another workbook, when its cell is typed over", () => {
    // F6 holds [1]Prices!A1.
    const said = saidOf("Maker's costs", (sheet) => ({
      ...sheet,
      rows: sheet.rows.map((row) => ({
        ...row,
        cells: row.cells.map((cell) => (row.row === 5 && cell.column === 5 ? { ...cell, value: 13 } : cell)),
      })),
    }));
    expect(said).toEqual(["Maker's costs: formulas that look into another workbook, from F6"]);
  });

  it("of rules for cells far below that stayed where they were as rows moved", () => {
    const far = [{ row: 400_000, column: 1, rows: 90_000, columns: 1 }];
    const [withRules] = book.sheets.filter(({ name }) => name === "Maker's costs") as [BookSheet];
    const rules = {
      conditions: withRules.conditions.slice(0, 1).map((one) => ({ ...one, areas: far })),
      validations: withRules.validations.slice(0, 1).map((one) => ({ ...one, areas: far })),
    };
    const added: Book = {
      ...book,
      sheets: book.sheets.map((one) => (one === withRules ? { ...one, ...rules } : one)),
    };
    const file = saveBook(original, added).bytes;
    const opened = openFile(file, "far.xlsx").book;
    const moved: Book = {
      ...opened,
      sheets: opened.sheets.map((one) =>
        one.id === withRules.id ? { ...one, rows: one.rows.map((row) => ({ ...row, row: row.row + 1 })) } : one,
      ),
    };
    const said = saveBook(file, moved).lost.map(({ sheet, what }) => `${sheet}: ${what}`);
    expect(said).toContain("Maker's costs: the conditional format in B400001:B490000");
    expect(said).toContain("Maker's costs: the rule of what may be typed in B400001:B490000");
  });

  it("of a filter that files get no words for, and not of one that the file had", () => {
    // The second column of the sheet's own filter shows the ten highest.
    expect(saidOf("Old", (sheet) => ({ ...sheet, tabColor: "112233" }))).toEqual([]);
    const said = saidOf("Pours", (sheet) => ({
      ...sheet,
      tables: sheet.tables.map((table) => ({
        ...table,
        filter: table.filter && { ...table.filter, columns: [{ column: 4, other: true as const }] },
      })),
    }));
    expect(said).toEqual(["Pours: a filter of the table Pours"]);
  });
});
