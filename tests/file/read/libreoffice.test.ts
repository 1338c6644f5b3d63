import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { Book, CellStyle } from "../../../src/file/book";
import { openFile } from "../../../src/file/openFile";
import { saveBook } from "../../../src/file/saveBook";
import { partsOf } from "../../samples/zipped";
import { LOOK } from "../rich/styles";
import { richWorkbook } from "../richWorkbook";
import { faultsOf } from "../write/packageFaults";

/** Files in tests/data that LibreOffice 7.4 wrote, saving as .xlsx. */
const read = (name: string) =>
  openFile(
    new Uint8Array(readFileSync(new URL(`../../data/libreoffice-${name}.xlsx`, import.meta.url))),
    `${name}.xlsx`,
  );

const sheetOf = (book: Book, name: string) => book.sheets.find((sheet) => sheet.name === name);
const valuesOf = (book: Book, name: string) =>
  (sheetOf(book, name)?.rows ?? []).flatMap(({ row, cells }) =>
    cells.flatMap(({ column, value }) => (value === null ? [] : [[row, column, value] as const])),
  );

/** A look without its number format, with what LibreOffice writes out where others leave it open. */
function lookOf(style: CellStyle | undefined) {
  if (!style) return undefined;
  const { font, fill, border, align, unlocked } = style;
  return {
    font: { ...font, color: font.color ?? "000000" },
    fill,
    border,
    align: { vertical: "bottom", ...align },
    unlocked,
  };
}

describe("a spreadsheet that counts its days from 1904", () => {
  const { book, remarks } = read("1904");
  const format = (style: number) => book.styles[style]?.format;

  it("has the days, times and lengths of time that it was written with", () => {
    expect(book.from1904).toBe(true);
    expect(remarks.map(({ what }) => what)).toEqual(["days counted from 1904"]);
    const [, second, third] = sheetOf(book, "Cure days")?.rows ?? [];
    // Written as 2026-11-26, 2026-12-10, 14:30 and 30 h 15 min; days counted from 1900 as spreadsheets do.
    expect(second?.cells.map(({ value }) => value)).toEqual([
      46_352, 46_366, 0.604166666666667, 1.26041666666667, 0.065, 215.5,
    ]);
    expect(second?.cells.map(({ style }) => format(style))).toEqual([
      "yyyy\\-mm\\-dd",
      "yyyy\\-mm\\-dd",
      "hh:mm",
      "[h]:mm",
      "0.0%",
      "General",
    ]);
    expect(second?.cells[1]?.formula).toBe("=A2+14");
    // 1904-01-02.
    expect(third?.cells[0]?.value).toBe(1463);
  });

  it("has its other values, formulas and looks", () => {
    const rows = sheetOf(book, "Cure days")?.rows ?? [];
    expect(rows[2]?.cells.slice(1).map(({ value, formula }) => [value, formula])).toEqual([
      [431, "=F2*2"],
      ["6.5% & more", '=TEXT(E2,"0.0%")&" & more"'],
      [true, "=F2>200"],
      [2155, "=F2:F3*10"],
      [100, undefined],
    ]);
    expect(rows[2]?.cells[4]?.spill).toEqual({ rows: 2, columns: 1, dynamic: false });
    expect(rows[3]?.cells.map(({ value }) => value)).toEqual(["two\nlines", null, { error: "#DIV/0!" }, 1000]);
    expect(rows[3]?.cells[3]?.spilled).toBe(true);
    expect(sheetOf(book, "Cure days")?.merges).toEqual([{ row: 3, column: 0, rows: 1, columns: 2 }]);
    expect(book.styles[rows[1]?.cells[0]?.style ?? 0]?.font).toMatchObject({ bold: true, color: "8A1C0B" });
    expect(book.styles[rows[1]?.cells[4]?.style ?? 0]).toMatchObject({
      fill: "FFF9E3",
      border: { left: { color: "8A8175" }, top: { color: "8A8175" } },
    });
  });
});

describe("the rich workbook as LibreOffice saved it", () => {
  const { book } = read("rich");
  const before = openFile(richWorkbook(), "rich.xlsx").book;

  it("has the values that it had, but for functions that LibreOffice does not know", () => {
    for (const name of ["Pours", "Maker's costs", "Summary", "Old"]) {
      const isKnown = ([row, column, value]: readonly [number, number, unknown]): boolean =>
        // The words of a pivot table are its own, and a data table it keeps in a way of its own.
        !(name === "Old" && column === 1 && (row === 4 || row === 5)) &&
        !(name === "Summary" && typeof value === "string") &&
        !(name === "Pours" && column === 5 && row > 2) &&
        !(name === "Maker's costs" && column >= 4 && row < 6 && !(column === 5 && row > 3));
      expect(valuesOf(book, name).filter(isKnown)).toEqual(valuesOf(before, name).filter(isKnown));
    }
  });

  it("has a filter that ends above the row of totals, and is written so", () => {
    const bytes = readFileSync(new URL("../../data/libreoffice-rich.xlsx", import.meta.url));
    const inFile = partsOf(bytes)["xl/tables/table1.xml"];
    expect(inFile).toMatch(
      /ref="A3:F7" headerRowCount="1" totalsRowCount="1" totalsRowShown="1"><autoFilter ref="A3:F7">/,
    );
    const filter = (one: Book) => sheetOf(one, "Pours")?.tables[0]?.filter;
    expect(filter(book)?.area).toEqual({ row: 2, column: 0, rows: 4, columns: 6 });
    expect(filter(book)?.area).toEqual(filter(before)?.area);
    expect(faultsOf(saveBook(null, book).bytes)).toEqual([]);
  });

  it("has our functions and younger ones, whose names LibreOffice writes in small letters", () => {
    const formulas = (name: string) =>
      sheetOf(book, name)?.rows.flatMap(({ cells }) => cells.flatMap(({ formula }) => formula ?? []));
    expect(formulas("Pours")).toContain("=POUR.FILLWEIGHT(250,0.86)");
    expect(formulas("Maker's costs")).toEqual(expect.arrayContaining(["=SORT(B4:B6,,-1)", "=SUM(E4#)"]));
  });

  it("has the looks that it had, themes and tints resolved as LibreOffice resolves them", () => {
    let compared = 0;
    for (const name of ["Pours", "Maker's costs", "Old"]) {
      for (const { row, cells } of sheetOf(before, name)?.rows ?? []) {
        for (const { column, style } of cells) {
          // LibreOffice knows no fill that goes from one colour to another, and no raised text of a whole cell.
          if (style === LOOK.turned || style === LOOK.pattern) continue;
          const again = sheetOf(book, name)
            ?.rows.find((one) => one.row === row)
            ?.cells.find((one) => one.column === column);
          expect([name, row, column, lookOf(book.styles[again?.style ?? -1])]).toEqual([
            name,
            row,
            column,
            lookOf(before.styles[style]),
          ]);
          compared++;
        }
      }
    }
    expect(compared).toBeGreaterThan(50);
  });

  it("has the same merged cells, widths, validations, links and hidden rows", () => {
    const [now, then] = [book, before].map((one) => sheetOf(one, "Maker's costs"));
    expect(now?.merges).toEqual(then?.merges);
    expect(now?.columns[0]).toEqual(then?.columns[0]);
    expect(now?.columns.find(({ hidden }) => hidden)?.first).toBe(6);
    expect(now?.rows.filter(({ hidden }) => hidden).map(({ row }) => row)).toEqual([15]);
    expect(now?.validations.map(({ kind, formulas, onWrong }) => [kind, formulas, onWrong])).toEqual(
      then?.validations.map(({ kind, formulas, onWrong }) => [kind, formulas, onWrong]),
    );
    expect(now?.links.map(({ address, place }) => [address, place])).toEqual(
      then?.links.map(({ address, place }) => [address, place]),
    );
    expect(now?.conditions.map(({ kind }) => kind)).toEqual(then?.conditions.map(({ kind }) => kind));
    expect(now?.notes[0]?.text).toBe(then?.notes[0]?.text);
    expect(sheetOf(book, "Old")?.state).toBe("hidden");
    expect(sheetOf(book, "Pours")?.print).toMatchObject({ paper: "a4", landscape: true, repeatRows: [2, 2] });
    expect(book.names.map(({ name, formula }) => [name, formula.replace("TRUE()", "TRUE")]).sort()).toEqual(
      before.names.map(({ name, formula }) => [name, formula]).sort(),
    );
  });
});
