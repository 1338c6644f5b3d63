import fc from "fast-check";
import type { Book, BookCell, BookRow, BookSheet, CellStyle } from "../../../src/file/book";
import { emptySheet } from "../../../src/file/emptyBook";
import type { CellValue } from "../../../src/sheet/sheet";
import { HOSTILE_TEXTS } from "../../hostileTexts";

const color = fc.integer({ min: 0, max: 0xffffff }).map((one) => one.toString(16).toUpperCase().padStart(6, "0"));

const font: fc.Arbitrary<CellStyle["font"]> = fc.record({
  name: fc.constantFrom("Calibri", "Arial", "Liberation Sans"),
  size: fc.integer({ min: 12, max: 80 }).map((halves) => halves / 2),
  bold: fc.boolean(),
  italic: fc.boolean(),
  underline: fc.constantFrom("none" as const, "single" as const, "double" as const),
  strike: fc.boolean(),
  color: fc.option(color),
});

const edge = fc.record({ style: fc.constantFrom("thin", "double", "dashDot", "thick"), color: fc.option(color) });

const style: fc.Arbitrary<CellStyle> = fc.record({
  font,
  fill: fc.option(color),
  border: fc.record({ top: edge, bottom: edge, left: edge, right: edge }, { requiredKeys: [] }),
  format: fc.constantFrom("General", "0.00", "0%", "@", "yyyy-mm-dd", '#,##0.0" g"', "0.0;[Red]-0.0"),
  align: fc.record(
    {
      horizontal: fc.constantFrom("left" as const, "fill" as const, "distributed" as const),
      vertical: fc.constantFrom("top" as const, "justify" as const),
      wrap: fc.constant(true),
      indent: fc.integer({ min: 1, max: 15 }),
      rotation: fc.oneof(fc.integer({ min: 1, max: 90 }), fc.constant("stacked" as const)),
    },
    { requiredKeys: [] },
  ),
});

const text = fc.oneof(fc.constantFrom(...HOSTILE_TEXTS), fc.string({ minLength: 1 }), fc.string({ unit: "grapheme" }));

const number = fc.oneof(
  fc.integer(),
  fc.double({ noNaN: true, noDefaultInfinity: true }).map((one) => one + 0),
  fc.constantFrom(0.1 + 0.2, 1e-300, 2 ** 53, 44561.25),
);

const value: fc.Arbitrary<CellValue> = fc.oneof(
  number,
  text,
  fc.boolean(),
  fc.constant(null),
  fc.constantFrom("#DIV/0!", "#N/A", "#REF!").map((error) => ({ error })),
);

const cell = (styles: number): fc.Arbitrary<Omit<BookCell, "column">> =>
  fc.record({ value, style: fc.nat(styles - 1), quoted: fc.boolean() }).map(({ quoted, ...one }) => ({
    ...one,
    ...(typeof one.value === "string" && one.value !== "" && quoted && { quoted: true as const }),
  }));

/** Rows or columns by their numbers, in order. */
const placed = <T>(one: fc.Arbitrary<T>, most: number) =>
  fc
    .uniqueArray(fc.tuple(fc.nat(most), one), { selector: ([at]) => at, maxLength: 8 })
    .map((all) => all.sort(([a], [b]) => a - b));

const length = fc.integer({ min: 1, max: 4000 }).map((one) => one / 16);

const rows = (styles: number): fc.Arbitrary<BookRow[]> =>
  placed(
    fc.record(
      { cells: placed(cell(styles), 40), height: length, hidden: fc.constant(true as const) },
      { requiredKeys: ["cells"] },
    ),
    1500,
  ).map((all) =>
    all
      .map(([row, { cells, ...rest }]) => ({
        row,
        ...rest,
        cells: cells
          .map(([column, one]) => ({ column, ...one }))
          .filter((one) => one.value !== null || one.style !== 0),
      }))
      .filter((one) => one.cells.length > 0 || Object.keys(one).length > 2),
  );

const sheet = (styles: number): fc.Arbitrary<Omit<BookSheet, "id" | "name">> =>
  fc
    .record({
      rows: rows(styles),
      columns: placed(fc.record({ width: length, hidden: fc.boolean() }), 30).map((all) =>
        all.map(([at, { width, hidden }]) => ({ first: at, last: at, width, ...(hidden && { hidden }) })),
      ),
      frozen: fc.record({ rows: fc.nat(3), columns: fc.nat(3) }),
      showsGrid: fc.boolean(),
      tabColor: fc.option(color),
      defaultWidth: fc.option(length),
      defaultHeight: fc.option(length),
      state: fc.constantFrom("visible" as const, "hidden" as const, "veryHidden" as const),
      notes: fc.uniqueArray(fc.record({ row: fc.nat(99), column: fc.nat(9), text: fc.string(), author: fc.string() }), {
        selector: ({ row, column }) => `${row},${column}`,
        maxLength: 4,
      }),
    })
    .map((some) => ({ ...emptySheet("", ""), ...some }));

/** Workbooks of values in any look, without formulas: what formulas give is another test's. */
export const randomBook: fc.Arbitrary<Book> = fc.array(style, { minLength: 1, maxLength: 6 }).chain((styles) =>
  fc.record({
    styles: fc.constant(styles),
    sheets: fc.array(sheet(styles.length), { minLength: 1, maxLength: 3 }).map((all) =>
      all.map((one, i) => {
        // The one that is shown.
        const state = i === 0 ? "visible" : one.state;
        return { ...one, state, id: String(i + 3), name: `Sheet ${i}` };
      }),
    ),
    names: fc.constant([]),
    from1904: fc.boolean(),
    settings: fc.constant({}),
    active: fc.constant(0),
  }),
);
