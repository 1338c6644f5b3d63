import { CopySheetCommand, SetRangeValuesMutation } from "@univerjs/preset-sheets-core";
import { strFromU8, unzipSync } from "fflate";
import { describe, expect, it } from "vitest";
import type { Book, BookSheet } from "../../../src/file/book";
import { openFile } from "../../../src/file/openFile";
import { saveBook } from "../../../src/file/saveBook";
import { richWorkbook } from "../../file/richWorkbook";
import { openedBooks } from "./openedBooks";

/** A sheet of a file, duplicated in the page: it takes along what the page knows nothing of. */

const books = openedBooks();

const original = richWorkbook();
const { book } = openFile(original, "rich.xlsx");
const costs = book.sheets[1] as BookSheet;

/** The second sheet of a book and its duplicate, once these commands were done in the duplicate. */
async function duplicated(of: Book, ...then: readonly { id: string; params: object }[]) {
  const workbook = await books.open(of);
  await books.does(workbook, CopySheetCommand.id, { subUnitId: of.sheets[1]?.id });
  const subUnitId = workbook.getSheets()[2]?.getSheetId();
  for (const { id, params } of then) await books.does(workbook, id, { subUnitId, ...params });
  const now = books.univer.book(workbook, of);
  books.univer.close(workbook);
  return { now, source: now.sheets[1] as BookSheet, copy: now.sheets[2] as BookSheet };
}

const typed = { id: SetRangeValuesMutation.id, params: { cellValue: { 20: { 1: { v: 200 } } } } };

describe("a duplicate of a sheet of a file", () => {
  it("has the very rules, notes and links of that sheet, as nothing of them changed", async () => {
    const { copy, source } = await duplicated(book, typed);
    expect(copy.copyOf).toBe(costs.id);
    expect(source.conditions).toBe(costs.conditions);
    for (const key of ["conditions", "validations", "notes", "links", "columns", "merges"] as const) {
      expect(copy[key], key).toEqual(costs[key]);
    }
  });

  it("comes into the file with the looks that the page shows nothing of", async () => {
    const { now } = await duplicated(book);
    const { bytes, lost } = saveBook(original, now);
    const overlays = (text: string) => [...text.matchAll(/<cfRule [^>]*dxfId="(\d+)"/g)].map(([, number]) => number);
    const parts = unzipSync(bytes);
    const text = (path: string) => strFromU8(parts[path] ?? new Uint8Array());
    expect(overlays(text("xl/worksheets/sheet1.xml"))).toEqual(overlays(text("xl/sheets/costs.xml")));
    expect(text("xl/worksheets/sheet1.xml")).toContain("<x14:dxf>");
    expect(lost.filter(({ sheet }) => sheet !== null).map(({ what }) => what)).toContain("a chart");
  });

  it("has the rules of cells far below what the page has", async () => {
    const far = { row: 400_000, column: 1, rows: 5, columns: 1 };
    const vast = { row: 500_000, column: 1, rows: 100_000, columns: 1 };
    const [condition] = costs.conditions;
    const sheets = book.sheets.map((sheet) =>
      sheet === costs && condition
        ? {
            ...sheet,
            conditions: [
              { ...condition, areas: [far] },
              { ...condition, areas: [vast], priority: 2 },
            ],
          }
        : sheet,
    );
    const { copy } = await duplicated({ ...book, sheets });
    expect(copy.conditions.map(({ areas }) => areas)).toEqual([[far], [vast]]);
  });
});
