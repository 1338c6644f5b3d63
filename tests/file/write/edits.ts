import fc, { type Arbitrary } from "fast-check";
import type { Book, BookCell, BookSheet } from "../../../src/file/book";
import { emptySheet } from "../../../src/file/emptyBook";

/** Something that a maker does to a workbook. */
export interface Edit {
  readonly what: string;
  readonly book: (book: Book) => Book;
  /** Kinds of parts that may differ beside the parts of the sheets it touches. */
  readonly touches: readonly ("styles" | "workbook")[];
  /** The sheets whose own parts may differ, by id. */
  readonly sheets: readonly string[];
}

const changed = (book: Book, id: string, change: (sheet: BookSheet) => BookSheet): Book => ({
  ...book,
  sheets: book.sheets.map((sheet) => (sheet.id === id ? change(sheet) : sheet)),
});

/** A sheet with another cell in this place; null takes it away. */
export function withCell(sheet: BookSheet, row: number, column: number, cell: Partial<BookCell> | null): BookSheet {
  const was = sheet.rows.find((one) => one.row === row) ?? { row, cells: [] };
  const others = was.cells.filter((one) => one.column !== column);
  const cells = cell === null ? others : [...others, { column, value: null, style: 0, ...cell }];
  const is = { ...was, cells: cells.sort((a, b) => a.column - b.column) };
  const rest = sheet.rows.filter((one) => one.row !== row);
  const isSaid = is.cells.length > 0 || Object.keys(is).length > 2;
  return { ...sheet, rows: (isSaid ? [...rest, is] : rest).sort((a, b) => a.row - b.row) };
}

/** Cells that hold something plain: no formula, no text in several looks, no heading of a table. */
const plainCells = (sheet: BookSheet): { row: number; cell: BookCell }[] =>
  sheet.rows.flatMap(({ row, cells }) =>
    cells
      .filter((cell) => !cell.formula && !cell.spilled && !cell.runs)
      .filter(({ column }) => !sheet.tables.some(({ area }) => area.row === row && column >= area.column))
      .map((cell) => ({ row, cell })),
  );

const onSheet = (book: Book, edit: (sheet: BookSheet) => Arbitrary<Edit>): Arbitrary<Edit> =>
  fc.constantFrom(...book.sheets).chain(edit);

const cellEdit = (book: Book, what: string, to: Arbitrary<Partial<BookCell> | null>): Arbitrary<Edit> =>
  onSheet(book, (sheet) =>
    fc.tuple(fc.constantFrom(...plainCells(sheet)), to).map(([{ row, cell }, now]) => ({
      what: `${what} at ${sheet.name} ${row} ${cell.column}`,
      touches: [],
      sheets: [sheet.id],
      book: (all) =>
        changed(all, sheet.id, (one) => withCell(one, row, cell.column, now && { style: plainStyle(cell), ...now })),
    })),
  );

/** Texts in a look for texts behind an apostrophe would be read as such ones. */
const plainStyle = ({ style, quoted }: BookCell): number => (quoted ? 0 : style);

/** Edits of every kind that a book allows. */
export const anyEdit = (book: Book): Arbitrary<Edit> =>
  fc.oneof(
    cellEdit(
      book,
      "a number",
      fc
        .double({ noNaN: true, noDefaultInfinity: true })
        .filter((one) => !Object.is(one, -0))
        .map((value) => ({ value })),
    ),
    cellEdit(
      book,
      "a text",
      fc.string({ unit: "grapheme" }).map((value) => ({ value })),
    ),
    cellEdit(book, "a formula", fc.constant({ value: 3, formula: "=1+2" })),
    cellEdit(book, "cleared", fc.constant(null)),
    onSheet(book, (sheet) =>
      fc.tuple(fc.nat(40), fc.nat(30)).map(([row, column]) => ({
        what: `a new cell at ${sheet.name}`,
        touches: [],
        sheets: [sheet.id],
        book: (all) => changed(all, sheet.id, (one) => withCell(one, 100 + row, column, { value: "new" })),
      })),
    ),
    onSheet(book, (sheet) =>
      fc.constantFrom(...plainCells(sheet)).map(({ row, cell }) => ({
        what: "a new look",
        touches: ["styles" as const],
        sheets: [sheet.id],
        book: (all) => {
          const styles = [...all.styles, { ...(all.styles[0] as Book["styles"][number]), fill: "123456" }];
          const { quoted: _, ...plain } = cell;
          return changed({ ...all, styles }, sheet.id, (one) =>
            withCell(one, row, cell.column, { ...plain, style: styles.length - 1 }),
          );
        },
      })),
    ),
    onSheet(book, (sheet) =>
      fc
        .constantFrom<Partial<BookSheet>>(
          { tabColor: "ABCDEF" },
          { frozen: { rows: 2, columns: 1 } },
          { showsGrid: !sheet.showsGrid },
          { merges: [{ row: 60, column: 1, rows: 2, columns: 2 }] },
          { columns: [{ first: 0, last: 4, width: 17 }] },
          {
            links: [{ area: { row: 0, column: 0, rows: 1, columns: 1 }, address: null, place: "Pours!A1", tip: null }],
          },
        )
        .map((feature) => ({
          what: `${Object.keys(feature)} of ${sheet.name}`,
          touches: [],
          sheets: [sheet.id],
          book: (all) => changed(all, sheet.id, (one) => ({ ...one, ...feature })),
        })),
    ),
    fc.constant<Edit>({
      what: "a new sheet",
      touches: ["workbook"],
      sheets: ["90"],
      book: (all) => ({
        ...all,
        sheets: [...all.sheets, withCell({ ...emptySheet("90", "New one"), defaultHeight: null }, 0, 0, { value: 1 })],
      }),
    }),
    fc.constant<Edit>({
      what: "the tabs turned round",
      touches: ["workbook"],
      sheets: [],
      book: (all) => ({ ...all, sheets: [...all.sheets].reverse(), active: all.sheets.length - 1 - all.active }),
    }),
  );
