import { Direction } from "@univerjs/core";
import {
  InsertRowCommand,
  InsertSheetCommand,
  RemoveRowCommand,
  SetRangeValuesMutation,
  SetStyleCommand,
  SetWorksheetNameCommand,
} from "@univerjs/preset-sheets-core";
import { SheetsDataValidationValidatorService } from "@univerjs/sheets-data-validation";
import { describe, expect, it } from "vitest";
import type { Book, BookSheet } from "../../../src/file/book";
import { everythingBook } from "./everythingBook";
import { openedBooks } from "./openedBooks";

const first = (book: Book): BookSheet => book.sheets[0] as BookSheet;
const cellAt = (sheet: BookSheet, row: number, column: number) =>
  sheet.rows.find((one) => one.row === row)?.cells.find((one) => one.column === column);

describe("a workbook of a file that was worked on in Univer", () => {
  const books = openedBooks();
  const book = everythingBook();

  type Do = (id: string, params: object) => Promise<void>;

  /** What becomes of the workbook when commands are given in it, on its first sheet, as menus and keys give them. */
  async function workedOn(work: (run: Do) => Promise<void>): Promise<Book> {
    const workbook = await books.open(book);
    await work((id, params) => books.does(workbook, id, params));
    const back = books.univer.book(workbook, book);
    books.univer.close(workbook);
    return back;
  }

  const typed = (row: number, column: number, v: string | number) =>
    workedOn((run) => run(SetRangeValuesMutation.id, { cellValue: { [row]: { [column]: { v } } } }));

  it("has what was typed, and the very objects of the file for all that was not touched", async () => {
    const back = await typed(2, 1, 200);
    const [now, before] = [first(back), first(book)];
    expect(cellAt(now, 2, 1)).toEqual({ column: 1, value: 200, style: 0 });
    // 200 x 0.86, and all three of 250, 200 and what Univer does not know: the total row.
    expect(cellAt(now, 2, 2)?.value).toBe(172);
    expect(cellAt(now, 3, 1)?.value).toBe(450);
    for (const key of [
      "columns",
      "merges",
      "tables",
      "validations",
      "conditions",
      "notes",
      "links",
      "filter",
    ] as const) {
      expect(now[key]).toBe(before[key]);
    }
    expect(back.names).toBe(book.names);
    expect(back.styles).toEqual(book.styles);
  });

  it("has its tables, rules, notes and links where they moved to, said as the file said them", async () => {
    const back = await workedOn((run) =>
      run(InsertRowCommand.id, {
        range: { startRow: 0, endRow: 1, startColumn: 0, endColumn: 30 },
        direction: Direction.UP,
      }),
    );
    const [now, before] = [first(back), first(book)];
    expect(now.tables).toEqual(
      before.tables.map((table) => ({
        ...table,
        area: { ...table.area, row: 2 },
        filter: { ...table.filter, area: { ...table.filter?.area, row: 2 } },
      })),
    );
    expect(cellAt(now, 3, 2)).toEqual(cellAt(before, 1, 2));
    expect(cellAt(now, 5, 1)).toEqual(cellAt(before, 3, 1));
    expect(cellAt(now, 9, 0)).toEqual(cellAt(before, 7, 0));
    expect(cellAt(now, 7, 1)).toEqual(cellAt(before, 5, 1));
    expect(now.rows.find(({ row }) => row === 2)?.height).toBe(31.2);
    expect(now.notes.map(({ row, author }) => [row, author])).toEqual([
      [3, "Maker"],
      [2, ""],
    ]);
    expect(now.links.map(({ area, tip }) => [area.row, tip])).toEqual(
      before.links.map(({ area, tip }) => [area.row + 2, tip]),
    );
    expect(now.validations[0]).toEqual({
      ...before.validations[0],
      areas: [{ row: 3, column: 0, rows: 2, columns: 1 }],
    });
    expect(back.names[0]?.formula).toBe("=Candles!$B$4");
  });

  it("has new looks after those of the file, and again the file's where they are the same", async () => {
    const back = await workedOn((run) =>
      run(SetStyleCommand.id, {
        range: { startRow: 3, endRow: 3, startColumn: 3, endColumn: 3 },
        style: { type: "bl", value: 1 },
      }),
    );
    const style = cellAt(first(back), 3, 3)?.style ?? 0;
    expect(style).toBeGreaterThanOrEqual(book.styles.length);
    expect(back.styles[style]).toEqual({
      ...(book.styles[0] as Book["styles"][0]),
      font: { ...book.styles[0]?.font, bold: true },
    });
    expect(back.styles.slice(0, book.styles.length)).toEqual(book.styles);
  });

  it("keeps what may be changed on a protected sheet so when its look is changed", async () => {
    const back = await workedOn((run) =>
      run(SetStyleCommand.id, {
        range: { startRow: 3, endRow: 3, startColumn: 2, endColumn: 2 },
        style: { type: "bl", value: 1 },
      }),
    );
    const { unlocked, font } = back.styles[cellAt(first(back), 3, 2)?.style ?? 0] as Book["styles"][0];
    expect({ unlocked, bold: font.bold }).toEqual({ unlocked: true, bold: true });
  });

  const removedRow = (row: number) =>
    workedOn((run) =>
      run(RemoveRowCommand.id, { range: { startRow: row, endRow: row, startColumn: 0, endColumn: 30 } }),
    );

  it("has no totals in a table whose row of totals was deleted, and has them below one that became shorter", async () => {
    const [table] = first(await removedRow(3)).tables;
    expect(table).toMatchObject({ hasTotals: false, area: { row: 0, rows: 3 } });
    const [shorter] = first(await removedRow(1)).tables;
    expect(shorter).toMatchObject({ hasTotals: true, area: { row: 0, rows: 3 } });
  });

  it("takes what its lists to choose from hold for right, and nothing else", async () => {
    const workbook = await books.open(book);
    const judge = books.univer.injector.get(SheetsDataValidationValidatorService);
    const judged = async (v: string) => {
      await books.does(workbook, SetRangeValuesMutation.id, { cellValue: { 2: { 0: { v } } } });
      return judge.validatorCell(workbook.getUnitId(), "3", 2, 0);
    };
    expect([await judged("Tin"), await judged("Bowl"), await judged("Jar")]).toEqual(["valid", "invalid", "valid"]);
    books.univer.close(workbook);
  });

  it("has formulas in the words of the file when a heading is written anew", async () => {
    const back = await typed(0, 1, "Water, weighed [g]");
    expect(first(back).tables[0]?.columns[1]?.heading).toBe("Water, weighed [g]");
    expect(cellAt(first(back), 1, 2)?.formula).toBe("=ROUND(Jars[[#This Row],[Water, weighed '[g']]]*0.86,0)");
    expect(cellAt(first(back), 3, 1)?.formula).toBe("=SUM(Jars[Water, weighed '[g']])");
  });

  it("has a sheet that was added, and one that was renamed under its id", async () => {
    const back = await workedOn(async (run) => {
      await run(InsertSheetCommand.id, { index: 2, sheet: { name: "New one" } });
      await run(SetWorksheetNameCommand.id, { name: "Candles 2" });
    });
    expect(back.sheets.map(({ id, name }) => [id, name])).toEqual([
      ["3", "Candles 2"],
      ["7", "Kept aside"],
      [expect.not.stringMatching(/^\d+$/), "New one"],
    ]);
    expect(back.names[0]?.formula).toBe("='Candles 2'!$B$2");
  });
});
