import type { Cell, Content, Table } from "../sheet/sheet";

/** How a cell looks and is shown. */
type Show = Pick<Cell, "look" | "format" | "align" | "across" | "lines">;

/** What a sample puts in a cell: a text, a number, nothing, or one shown in its own way. */
export type Value = string | number | null | (Show & Exclude<Content, { text: string }>);

/** A column of a table: its heading, how its cells look, and the formula when all its cells have the same. */
export interface Column extends Pick<Show, "look" | "format" | "align" | "lines"> {
  readonly heading: string;
  readonly formula?: string;
  /** The table and its column that know what may stand here. */
  readonly choices?: readonly [table: string, column: string];
}

/** One cell; rows and columns from 0. */
export function cell(row: number, column: number, value: Value, show: Show = {}): Cell {
  if (value === null) return { row, column, ...show };
  if (typeof value === "string") return { row, column, content: { text: value }, ...show };
  if (typeof value === "number") return { row, column, content: { number: value }, ...show };
  if ("number" in value) {
    const { number, ...own } = value;
    return { row, column, content: { number }, ...show, ...own };
  }
  const { formula, ...own } = value;
  return { row, column, content: { formula }, ...show, ...own };
}

/** The title of a sheet and the note below it, across the sheet's columns: rows 0 and 1. */
export function heading(title: string, note: string, across: number): Cell[] {
  return [cell(0, 0, title, { look: "title" }), cell(1, 0, note, { look: "note", across })];
}

/** A label, the input to its right, and off its frame a note across the columns up to `across`. */
export function setting(
  row: number,
  label: string,
  value: Value,
  note: string,
  across: number,
  format?: string,
): Cell[] {
  return [
    cell(row, 0, label, { look: "label" }),
    cell(row, 1, value, { look: "input", align: "right", ...(format && { format }) }),
    cell(row, 2, `  ${note}`, { look: "note", across: across - 2 }),
  ];
}

/** The heading row of columns that are no table. */
export function headingRow(row: number, column: number, columns: readonly Column[]): Cell[] {
  return columns.map(({ heading, align }, i) =>
    cell(row, column + i, heading, { look: "heading", ...(align && { align }) }),
  );
}

/** A table and its cells. A row gives the values of the columns that have no formula, in their order. */
export function table(
  name: string,
  row: number,
  column: number,
  columns: readonly Column[],
  rows: readonly (readonly Value[])[],
): { table: Table; cells: Cell[] } {
  const cells = headingRow(row, column, columns);
  for (const [r, values] of rows.entries()) {
    let next = 0;
    for (const [c, { heading: _, formula, choices: __, ...show }] of columns.entries()) {
      const value = formula ? { formula } : (values[next++] ?? null);
      cells.push(cell(row + 1 + r, column + c, value, show));
    }
  }
  const choices = columns.flatMap(({ heading, choices: of }) => (of ? { heading, from: of[0], column: of[1] } : []));
  const headings = columns.map((one) => one.heading);
  return { table: { name, row, column, headings, rows: rows.length, ...(choices.length > 0 && { choices }) }, cells };
}

/** References to the cells of a table's own row: `Vessels[[#This Row],[Volume (ml)]]`. */
export const thisRow = (name: string) => (column: string) => `${name}[[#This Row],[${column}]]`;

/** What another table says, in one of its columns, of the thing with this name (a reference or a text in quotes). */
export const lookUp = (from: string, column: string, key: string, name: string): string =>
  `INDEX(${from}[${column}],MATCH(${name},${from}[${key}],0))`;

/** A formula that stays blank where this cell is blank. */
export const unlessBlank = (reference: string, formula: string): string => `=IF(LEN(${reference})=0,"",${formula})`;

/** A day as a spreadsheet counts it. */
export const day = (year: number, month: number, dayOfMonth: number): number =>
  Date.UTC(year, month - 1, dayOfMonth) / 86_400_000 + 25_569;
