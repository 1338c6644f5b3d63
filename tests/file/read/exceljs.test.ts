import { readFileSync } from "node:fs";
import ExcelJS from "exceljs";
import { beforeAll, describe, expect, it } from "vitest";
import type { Book, BookSheet } from "../../../src/file/book";
import { toFileFormula } from "../../../src/file/formula/toFile";
import { openFile } from "../../../src/file/openFile";
import { columnLetters } from "../../../src/sheet/columnLetters";
import { exceljsBook, exceljsValue } from "./exceljsBook";

const SAMPLES = ["1-studio", "2-burn-tests"].map((name) => `sample-workbooks/${name}.xlsx`);

/** The rich workbook as LibreOffice 7.4 saved it. */
const LIBREOFFICE = "tests/data/libreoffice-rich.xlsx";

const read = (file: string): Uint8Array => new Uint8Array(readFileSync(new URL(`../../../${file}`, import.meta.url)));

const address = (row: number, column: number): string => `${columnLetters(column)}${row + 1}`;
const cellsOf = (sheet: BookSheet) => sheet.rows.flatMap(({ row, cells }) => cells.map((cell) => ({ row, ...cell })));

/** Each cell is compared with what exceljs reads of the same file. */
describe.each([...SAMPLES, LIBREOFFICE])("%s", (file) => {
  const bytes = read(file);
  let book: Book;
  let expected: ExcelJS.Workbook;

  beforeAll(async () => {
    book = openFile(bytes, file).book;
    expected = await exceljsBook(bytes);
  });

  it("has the same sheets in the same order", () => {
    expect(book.sheets.map(({ name }) => name)).toEqual(expected.worksheets.map(({ name }) => name));
  });

  it("has the same values, formulas and number formats in every cell", () => {
    let compared = 0;
    for (const sheet of book.sheets) {
      const page = expected.getWorksheet(sheet.name);
      for (const { row, column, value, formula, style } of cellsOf(sheet)) {
        const cell = page?.getCell(row + 1, column + 1);
        if (!cell) throw new Error("no cell");
        const where = `${sheet.name}!${address(row, column)}`;
        // exceljs has an empty saved text as no value, and a merged cell's value in all that it covers.
        if (!cell.isMerged || cell.master === cell)
          expect([where, value || null]).toEqual([where, exceljsValue(cell) || null]);
        if (cell.formulaType !== ExcelJS.FormulaType.Shared) {
          // LibreOffice writes functions that it does not know in small letters. Links to other workbooks are left out.
          expect([where, formula && toFileFormula(formula).toUpperCase()]).toEqual([
            where,
            cell.formula?.startsWith("[") ? undefined : cell.formula?.toUpperCase(),
          ]);
        }
        // exceljs leaves out the sign that takes a letter as it is.
        expect([where, book.styles[style]?.format.replaceAll("\\", "")]).toEqual([
          where,
          (cell.numFmt ?? "General").replaceAll("\\", ""),
        ]);
        compared++;
      }
    }
    expect(compared).toBeGreaterThan(50);
  });

  it("misses no cell that exceljs finds", () => {
    for (const page of expected.worksheets) {
      const sheet = book.sheets.find(({ name }) => name === page.name);
      const known = new Set(sheet && cellsOf(sheet).map(({ row, column }) => address(row, column)));
      page.eachRow((row) =>
        row.eachCell((cell) =>
          expect([page.name, cell.address, known.has(cell.address)]).toEqual([page.name, cell.address, true]),
        ),
      );
    }
  });

  it("has the same looks", () => {
    for (const sheet of book.sheets) {
      const page = expected.getWorksheet(sheet.name);
      for (const { row, column, style } of cellsOf(sheet)) {
        const { font, fill, border, alignment } = page?.getCell(row + 1, column + 1) ?? {};
        const ours = book.styles[style];
        const edge = ([side, said]: [string, { style?: string } | undefined]) =>
          said?.style && side !== "diagonal" ? [[side, said.style]] : [];
        expect({
          bold: ours?.font.bold,
          size: ours?.font.size,
          name: ours?.font.name,
          fill: ours?.fill,
          border: Object.entries(ours?.border ?? {})
            .flatMap(edge)
            .sort(),
          wrap: ours?.align.wrap ?? false,
          horizontal: ours?.align.horizontal,
        }).toEqual({
          bold: font?.bold ?? false,
          // exceljs says nothing of the first look.
          size: font ? font.size : ours?.font.size,
          name: font ? font.name : ours?.font.name,
          fill: fill?.type === "pattern" ? (fill.fgColor?.argb?.slice(2) ?? null) : null,
          border: Object.entries(border ?? {})
            .flatMap(edge)
            .sort(),
          wrap: alignment?.wrapText ?? false,
          horizontal: (alignment?.horizontal as string) === "general" ? undefined : alignment?.horizontal,
        });
      }
    }
  });

  it("has the same merged cells, widths, heights, panes, paper and tables", () => {
    for (const sheet of book.sheets) {
      const page = expected.getWorksheet(sheet.name) as ExcelJS.Worksheet;
      const merged = sheet.merges.map(
        ({ row, column, rows, columns }) => `${address(row, column)}:${address(row + rows - 1, column + columns - 1)}`,
      );
      expect(merged.sort()).toEqual([...page.model.merges].sort());
      for (const { first, last, width, hidden } of sheet.columns) {
        for (let column = first; column <= last; column++) {
          expect(page.getColumn(column + 1).width).toBe(width);
          expect(page.getColumn(column + 1).hidden).toBe(hidden ?? false);
        }
      }
      for (const { row, height } of sheet.rows) expect(page.getRow(row + 1).height).toBe(height);
      expect(sheet.frozen.rows).toBe(page.views[0]?.state === "frozen" ? page.views[0].ySplit : 0);
      expect(sheet.showsGrid).toBe(page.views[0]?.showGridLines);
      if (sheet.print) {
        const paper = Number(page.pageSetup.paperSize);
        if (paper === 1 || paper === 9) expect(sheet.print.paper).toBe(paper === 1 ? "letter" : "a4");
        const repeated = sheet.print.repeatRows?.map((row) => row + 1).join(":");
        expect(repeated).toBe(page.pageSetup.printTitlesRow);
      }
      const tables = page
        .getTables()
        .map((table) => (table as unknown as { table: ExcelJS.TableProperties & { tableRef: string } }).table);
      expect(sheet.tables.map(({ name, columns }) => [name, columns.map(({ heading }) => heading)])).toEqual(
        tables.map(({ name, columns }) => [name, columns.map((column) => column.name)]),
      );
      expect(
        sheet.tables.map(
          ({ area }) =>
            `${address(area.row, area.column)}:${address(area.row + area.rows - 1, area.column + area.columns - 1)}`,
        ),
      ).toEqual(tables.map(({ tableRef }) => tableRef));
    }
  });
});

it.each(SAMPLES)("%s has the formulas of its tables' columns and what spills", (file) => {
  const { book } = openFile(read(file), file);
  const formulas = book.sheets.flatMap(({ tables }) =>
    tables.flatMap(({ columns }) => columns.flatMap(({ formula }) => formula ?? [])),
  );
  expect(formulas.some((formula) => formula.includes("POUR."))).toBe(true);
  const ours = book.sheets.flatMap(cellsOf).filter(({ formula }) => formula?.includes("POUR."));
  expect(ours.length).toBeGreaterThan(0);
  for (const { spill } of ours) expect(spill?.dynamic).toBe(true);
});
