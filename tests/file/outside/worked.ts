import type { Book, BookCell, BookSheet } from "../../../src/file/book";
import { emptySheet } from "../../../src/file/emptyBook";
import { renamedBook } from "../../../src/file/write/renamedBook";
import { withCell } from "../write/edits";

/**
 * A workbook after an hour of work on it: cells of each kind added below, one looks another way, a note, a rule, a link,
 * another name for the first sheet, a new sheet with a table. All values are what the formulas come to.
 */
export function worked(book: Book): Book {
  const [first, ...others] = book.sheets as [BookSheet, ...BookSheet[]];
  const renames = new Map([[first.name, "Renamed & more"]]);
  const below = Math.max(0, ...first.rows.map(({ row }) => row)) + 3;
  const cells: readonly Partial<BookCell>[] = [
    { value: 0.1 },
    { value: "=text & <more>" },
    { value: 42, formula: "=2*21" },
    { value: "a-b", formula: '="a"&"-"&"b"' },
    { value: true },
    { value: 215, formula: "=POUR.FILLWEIGHT(250,0.86)" },
    { value: 0.25, style: book.styles.length },
  ];
  const written = cells.reduce((sheet, cell, column) => withCell(sheet, below, column, cell), first);
  const at = { row: below, column: 0, rows: 1, columns: 1 };
  const edited: BookSheet = {
    ...written,
    name: "Renamed & more",
    notes: [...written.notes, { row: below, column: 0, text: "noted <here>\ntwice", author: "A maker" }],
    links: [
      ...written.links,
      { area: { ...at, column: 1 }, address: "https://example.com/?a=1&b=2", place: null, tip: null },
    ],
    conditions: [
      ...written.conditions,
      {
        areas: [at],
        kind: "cellIs",
        operator: "greaterThan",
        formulas: ["=1"],
        priority: Math.max(0, ...written.conditions.map(({ priority }) => priority)) + 50,
        stops: false,
        look: { font: { bold: true, color: "8A1C0B" }, fill: "FBECE6" },
      },
    ],
    validations: [
      ...written.validations,
      {
        areas: [{ ...at, column: 4 }],
        kind: "list",
        operator: "between",
        formulas: ['="yes,no"'],
        allowsBlank: true,
        showsList: true,
        onWrong: "stop",
        error: { title: "Choose", text: "One of the list" },
      },
    ],
  };
  const style = { ...(book.styles[0] as Book["styles"][number]), fill: "E8E2D6", format: '0.000 "kg"' };
  const all = { ...book, styles: [...book.styles, style], sheets: [edited, ...others, withTable(renames)] };
  return renamedBook(all, renames, new Map());
}

function withTable(renames: ReadonlyMap<string, string>): BookSheet {
  const rows = [
    [{ value: "Jar" }, { value: "Fill (g)" }, { value: "Twice" }],
    ...[180, 215].map((fill, i) => [
      { value: `Jar ${i + 1}` },
      { value: fill },
      { value: 2 * fill, formula: "=Jars[[#This Row],[Fill (g)]]*2" },
    ]),
  ];
  const sheet = rows.reduce(
    (one, cells, row) => cells.reduce((all, cell, column) => withCell(all, row, column, cell), one),
    emptySheet("new", "New jars"),
  );
  const area = { row: 0, column: 0, rows: 3, columns: 3 };
  const columns = [
    { heading: "Jar" },
    { heading: "Fill (g)" },
    { heading: "Twice", formula: "=Jars[[#This Row],[Fill (g)]]*2" },
  ];
  const [name] = renames.values();
  return {
    ...withCell(sheet, 4, 0, { value: 0.2, formula: `=0.1+0*ROWS('${name}'!A1:A2)+0.1` }),
    tables: [
      {
        name: "Jars",
        area,
        hasHeadings: true,
        hasTotals: false,
        columns,
        filter: { area, columns: [] },
        look: "TableStyleLight1",
        stripes: true,
      },
    ],
    print: { paper: "a4", repeatRows: [0, 0] },
    frozen: { rows: 1, columns: 0 },
  };
}
