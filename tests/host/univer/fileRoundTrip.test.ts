import { readFileSync } from "node:fs";
import fc from "fast-check";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Book } from "../../../src/file/book";
import { openFile } from "../../../src/file/openFile";
import { toUniver } from "../../../src/host/univer/file/toUniver";
import { SAMPLES } from "../../../src/samples/index";
import { cases } from "../../cases";
import { everythingBook } from "./everythingBook";
import { randomBook } from "./randomBook";
import { UniverInNode } from "./univerInNode";

/** Files whose saved values were worked out by the same functions, so that working them out again changes nothing. */
const sampleBook = (file: string): Book =>
  openFile(readFileSync(new URL(`../../../sample-workbooks/${file}`, import.meta.url)), file).book;

/** Texts without a sign at the end of what a formula fills are not among the saved values of the samples. */
const withoutBlankSpills = (book: Book): Book => ({
  ...book,
  sheets: book.sheets.map((sheet) => ({
    ...sheet,
    rows: sheet.rows
      .map((row) => ({
        ...row,
        cells: row.cells
          .map(({ spill: _, spilled, ...cell }) => (spilled && cell.value === "" ? { ...cell, value: null } : cell))
          .filter(({ value, style }) => value !== null || style !== 0),
      }))
      .filter(({ cells }) => cells.length > 0),
  })),
});

describe("a workbook of a file in Univer", () => {
  let univer: UniverInNode;
  let ids = 0;
  beforeAll(async () => {
    const { metadataText, script } = await import("../../functions/built");
    univer = new UniverInNode({ script, metadata: metadataText });
  });
  afterAll(() => univer.dispose());

  const again = async (book: Book) => {
    const workbook = await univer.open(toUniver(book, `book${ids++}`));
    const back = univer.book(workbook, book);
    univer.close(workbook);
    return back;
  };

  it("comes back as it was", async () => {
    const book = everythingBook();
    expect(await again(book)).toEqual(book);
  });

  it.each(SAMPLES.map(({ file }) => file).slice(0, cases(1, SAMPLES.length)))(
    "comes back as it was: %s",
    async (file) => {
      const book = sampleBook(file);
      expect(withoutBlankSpills(await again(book))).toEqual(withoutBlankSpills(book));
    },
  );

  it("comes back as it was, whatever it holds", async () => {
    await fc.assert(
      fc.asyncProperty(randomBook, async (book) => {
        expect(await again(book)).toEqual(book);
      }),
      { numRuns: cases(6, 300) },
    );
  });
});
