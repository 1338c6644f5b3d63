import { describe, expect, it } from "vitest";
import type { Book, BookSheet } from "../../../src/file/book";
import { emptyBook, emptySheet, PLAIN_STYLE } from "../../../src/file/emptyBook";
import { fromUniver } from "../../../src/host/univer/file/fromUniver";
import { toUniver } from "../../../src/host/univer/file/toUniver";

const HEADINGS = ["Jar", "Water weight (g)", "Water weight (g)", "Water weight (g)", "Number of this"];

const area = { row: 0, column: 0, rows: 2, columns: HEADINGS.length };
const sheet: BookSheet = {
  ...emptySheet("1", "Vessels"),
  rows: [{ row: 0, cells: HEADINGS.map((value, column) => ({ column, value, style: column === 3 ? 1 : 0 })) }],
  columns: [
    { first: 2, last: 2, width: 6 },
    { first: 4, last: 4, hidden: true },
  ],
  tables: [
    {
      name: "Vessels",
      area,
      hasHeadings: true,
      hasTotals: false,
      columns: HEADINGS.map((heading) => ({ heading })),
      filter: { area, columns: [] },
      look: null,
      stripes: false,
    },
  ],
};
const styles = [PLAIN_STYLE, { ...PLAIN_STYLE, align: { wrap: true } }];
const book: Book = { ...emptyBook(), sheets: [sheet], styles };

describe("headings of tables in a file", () => {
  const data = toUniver(book, "room");
  const widths = HEADINGS.map((_, column) => data.sheets["1"]?.columnData?.[column]?.w);

  it("have room beside the filter's button where the file says no width, for their longest word where they wrap", () => {
    // A digit of the standard font is 7 pixels wide, and the button about 24.
    expect(widths[1]).toBeGreaterThan("Water weight (g)".length * 7 + 24);
    expect(widths[3]).toBeGreaterThan("weight".length * 7 + 24);
    expect(widths[3]).toBeLessThan(widths[1] ?? 0);
  });

  it("are as narrow as the maker made them, hidden with their column, and as usual where they fit", () => {
    expect(widths[2]).toBe(42);
    expect([widths[0], widths[4]]).toEqual([undefined, undefined]);
  });

  it("give the file no widths", () => {
    expect(fromUniver(data, book).sheets[0]?.columns).toBe(sheet.columns);
  });
});
