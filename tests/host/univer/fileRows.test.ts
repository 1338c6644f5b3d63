import { describe, expect, it } from "vitest";
import type { Book, BookRow, CellStyle } from "../../../src/file/book";
import { emptySheet, PLAIN_FONT, PLAIN_STYLE } from "../../../src/file/emptyBook";
import { fromUniver } from "../../../src/host/univer/file/fromUniver";
import { toUniver } from "../../../src/host/univer/file/toUniver";

const STYLES: CellStyle[] = [
  PLAIN_STYLE,
  { ...PLAIN_STYLE, font: { ...PLAIN_FONT, size: 18 } },
  { ...PLAIN_STYLE, align: { wrap: true } },
];

const ROWS: BookRow[] = [
  { row: 0, cells: [{ column: 0, value: "Pours of the week", style: 1 }] },
  { row: 1, cells: [{ column: 0, value: "Stir for two minutes, then wait", style: 2 }] },
  { row: 2, cells: [{ column: 0, value: "Wait", style: 2 }] },
  { row: 3, height: 12, cells: [{ column: 0, value: "Pours of the month", style: 1 }] },
  { row: 4, cells: [{ column: 0, value: 0.3, formula: "=0.1+0.2", style: 0 }] },
];

const book: Book = {
  sheets: [
    {
      ...emptySheet("1", "Pours"),
      rows: ROWS,
      columns: [{ first: 0, last: 0, width: 18 }],
      validations: [
        {
          areas: [{ row: 2, column: 0, rows: 1, columns: 1 }],
          kind: "list",
          operator: "between",
          formulas: ['="Wait,Curing"'],
          allowsBlank: true,
          showsList: true,
          onWrong: "stop",
        },
      ],
    },
  ],
  styles: STYLES,
  names: [],
  active: 0,
  from1904: false,
  settings: {},
};

describe("rows of a file in Univer", () => {
  const data = toUniver(book, "rows");
  const rowData = data.sheets["1"]?.rowData ?? {};

  it("are as high as their texts where the file says no height", () => {
    // 18 points need 24 and two lines of 11 points need 30, as Excel fits them; 4/3 pixels to a point.
    expect(rowData[0]?.ah).toBeGreaterThanOrEqual(32);
    expect(rowData[1]?.ah).toBeGreaterThanOrEqual(40);
    expect(rowData[1]?.ah).toBeLessThan(60);
    // Univer puts a text with an arrow so much lower.
    expect(rowData[2]).toEqual({ ah: 24 });
    expect(rowData[4]).toBeUndefined();
    expect(rowData[3]).toEqual({ h: 16, ia: 0 });
  });

  it("say no such height to the file", () => {
    expect(fromUniver(data, book).sheets[0]?.rows).toEqual(ROWS);
  });

  it("keep a number of the file that differs in its last digits alone", () => {
    const sheet = data.sheets["1"];
    const worked = (v: number) => {
      const cellData = { ...sheet?.cellData, 4: { 0: { v, t: 2, f: "=0.1+0.2" } } };
      const back = fromUniver({ ...data, sheets: { 1: { ...sheet, cellData } } }, book);
      return back.sheets[0]?.rows.at(-1)?.cells[0]?.value;
    };
    // The sum of doubles is 0.30000000000000004.
    expect(worked(0.1 + 0.2)).toBe(0.3);
    expect(worked(0.3000001)).toBe(0.3000001);
  });

  it("draw what is chosen from a list as plain text with an arrow, which the file does not say", () => {
    const { data: json = "" } = data.resources?.find(({ name }) => name === "SHEET_DATA_VALIDATION_PLUGIN") ?? {};
    expect(JSON.parse(json)["1"][0].renderMode).toBe(1);
    expect(fromUniver(data, book).sheets[0]?.validations).toBe(book.sheets[0]?.validations);
  });
});
