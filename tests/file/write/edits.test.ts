import fc from "fast-check";
import { unzipSync } from "fflate";
import { describe, expect, it } from "vitest";
import type { Book } from "../../../src/file/book";
import { openFile } from "../../../src/file/openFile";
import { saveBook } from "../../../src/file/saveBook";
import { cases } from "../../cases";
import { richWorkbook } from "../richWorkbook";
import { anyEdit } from "./edits";
import { faultsOf } from "./packageFaults";

const original = richWorkbook();
const parts = unzipSync(original);
const { book } = openFile(original, "rich.xlsx");

/** Where the sheets of the rich workbook stand, by their ids. */
const PATHS: Readonly<Record<string, string>> = {
  1: "xl/sheets/first.xml",
  4: "xl/sheets/costs.xml",
  2: "xl/sheets/summary.xml",
  5: "xl/sheets/old.xml",
};

/** With the looks of cells in the place of their numbers: new ones that no cell has are not written. */
const withLooks = ({ styles, sheets, ...rest }: Book) => ({
  ...rest,
  styles: styles.slice(0, book.styles.length),
  sheets: sheets.map((sheet) => ({
    ...sheet,
    rows: sheet.rows.map((row) => ({
      ...row,
      cells: row.cells.map((cell) => ({ ...cell, style: styles[cell.style] })),
    })),
  })),
});

const isSame = (a: Uint8Array | undefined, b: Uint8Array | undefined): boolean =>
  a !== undefined && b !== undefined && Buffer.compare(a, b) === 0;

describe("a file of the maker's own", () => {
  it("stays the same file while nothing was changed", () => {
    expect(saveBook(original, book)).toEqual({ bytes: original, lost: [] });
  });

  it("holds each edit, and all else as it was: untouched parts byte for byte", () => {
    fc.assert(
      fc.property(fc.array(anyEdit(book), { minLength: 1, maxLength: 3 }), (wished) => {
        // Only one new sheet, and tabs turned round once, are edits of their own.
        const edits = wished.filter(({ what }, i) => wished.findIndex((one) => one.what === what) === i);
        const now = edits.reduce((all, edit) => edit.book(all), book);
        const { bytes } = saveBook(original, now);
        expect(faultsOf(bytes)).toEqual([]);
        expect(withLooks(openFile(bytes, "rich.xlsx").book)).toEqual(withLooks(now));

        const saved = unzipSync(bytes);
        const touched = new Set([
          ...edits.flatMap(({ sheets }) => sheets.map((id) => PATHS[id] ?? "xl/worksheets/sheet1.xml")),
          ...(edits.some(({ touches }) => touches.includes("styles")) ? ["xl/look.xml"] : []),
          ...(edits.some(({ touches }) => touches.includes("workbook")) ? ["xl/book.xml"] : []),
        ]);
        const lists = ["[Content_Types].xml", "xl/_rels/book.xml.rels", "xl/sheets/_rels/costs.xml.rels"];
        const other = [...new Set([...Object.keys(parts), ...Object.keys(saved)])].filter(
          (path) => !isSame(parts[path], saved[path]) && !touched.has(path) && !lists.includes(path),
        );
        // The order of calculation goes where formulas come or go.
        expect(other.filter((path) => path !== "xl/calcChain.xml")).toEqual([]);
      }),
      { numRuns: cases(15, 1000) },
    );
  });
});
