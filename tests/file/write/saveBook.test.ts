import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { openFile } from "../../../src/file/openFile";
import { saveBook } from "../../../src/file/saveBook";
import { cases } from "../../cases";
import { anyBook } from "./books";
import { faultsOf } from "./packageFaults";

describe("a new file", () => {
  it("gives the book that was saved when it is opened, whatever the book", () => {
    fc.assert(
      fc.property(anyBook, (book) => {
        const { bytes, lost } = saveBook(null, book);
        expect(faultsOf(bytes)).toEqual([]);
        expect(openFile(bytes, "new.xlsx").book).toEqual(book);
        expect(lost).toEqual([]);
      }),
      { numRuns: cases(20, 1000) },
    );
  });

  it("is the same, byte for byte, for the same book", () => {
    fc.assert(
      fc.property(anyBook, (book) => {
        expect(Buffer.compare(saveBook(null, book).bytes, saveBook(null, book).bytes)).toBe(0);
      }),
      { numRuns: 10 },
    );
  });
});
