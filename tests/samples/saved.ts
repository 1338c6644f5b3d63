import { readFileSync } from "node:fs";
import ExcelJS, { type Worksheet } from "exceljs";
import { strToU8, zipSync } from "fflate";
import { calculate } from "../../src/engine/calculate";
import type { Content, Sheet } from "../../src/sheet/sheet";
import { metadataText, script } from "../functions/built";
import { partsOf } from "./zipped";

/** The saved values of a committed sample workbook, read back by a reader of its own. */

export type Saved = string | number | null;
export type Row = Record<string, Saved>;

export class SavedBook {
  private constructor(readonly book: ExcelJS.Workbook) {}

  static async open(file: string): Promise<SavedBook> {
    const bytes = readFileSync(new URL(`../../sample-workbooks/${file}`, import.meta.url));
    // exceljs cannot read a table column that has a formula (4.4.0 loses the columns after it).
    const parts = Object.entries(partsOf(bytes)).map(([path, xml]) => [
      path,
      strToU8(xml.replace(/<calculatedColumnFormula.*?<\/calculatedColumnFormula>/gs, "")),
    ]);
    const book = new ExcelJS.Workbook();
    await book.xlsx.load(zipSync(Object.fromEntries(parts)).buffer as ArrayBuffer);
    return new SavedBook(book);
  }

  page(name: string): Worksheet {
    const found = this.book.getWorksheet(name);
    if (!found) throw new Error(`no sheet ${name}`);
    return found;
  }

  /** What a cell shows; exceljs reads the empty saved text of a formula as no result, and a day as a Date. */
  saved(sheet: string, address: string): Saved {
    const { formula, result, value } = this.page(sheet).getCell(address);
    const shown = formula ? (result ?? "") : value;
    return shown instanceof Date ? shown.getTime() / 86_400_000 + 25_569 : (shown as Saved);
  }

  number(sheet: string, address: string): number {
    return Number(this.saved(sheet, address));
  }

  /** The rows of a table by their headings. */
  rows(sheet: string, name: string): Row[] {
    const { tableRef } = (this.page(sheet).getTable(name) as unknown as { table: { tableRef: string } }).table;
    return this.range(sheet, tableRef);
  }

  /** The rows of a range by the headings in its first row. */
  range(sheet: string, range: string): Row[] {
    const [, from = "", top = "", to = "", bottom = ""] = /^([A-Z])(\d+):([A-Z])(\d+)$/.exec(range) ?? [];
    const columns = Array.from({ length: to.charCodeAt(0) - from.charCodeAt(0) + 1 }, (_, i) =>
      String.fromCharCode(from.charCodeAt(0) + i),
    );
    return Array.from({ length: Number(bottom) - Number(top) }, (_, i) =>
      Object.fromEntries(
        columns.map((column) => [
          String(this.saved(sheet, column + top)),
          this.saved(sheet, `${column}${Number(top) + 1 + i}`),
        ]),
      ),
    );
  }

  /** All words of a sheet. */
  words(sheet: string): string {
    const words: string[] = [];
    this.page(sheet).eachRow((row) => row.eachCell(({ value }) => words.push(String(value))));
    return words.join(" ");
  }
}

export const number = (row: Row, heading: string): number => Number(row[heading]);
export const text = (row: Row, heading: string): string => String(row[heading]);
export const limit = (row: Row, heading: string): number | undefined =>
  row[heading] === null ? undefined : Number(row[heading]);

export const total = (rows: readonly Row[], heading: string): number =>
  rows.reduce((sum, row) => sum + number(row, heading), 0);

export function byName(rows: readonly Row[], heading: string, name: Saved | undefined): Row {
  const found = rows.find((row) => row[heading] === name);
  if (!found) throw new Error(`no ${name}`);
  return found;
}

/** What is typed into a cell: a text that begins with `=` is a formula; null clears the cell. */
export type Typed = number | string | null;

function contentOf(typed: Exclude<Typed, null>): Content {
  if (typeof typed === "number") return { number: typed };
  return typed.startsWith("=") ? { formula: typed } : { text: typed };
}

/** The values of sheets by address, when something else was typed into some cells, `Prices!C5`. */
export async function withEdits(sheets: readonly Sheet[], edits: Record<string, Typed>) {
  const edited = sheets.map((one) => ({
    ...one,
    cells: one.cells.map((cell) => {
      const typed = edits[`${one.name}!${String.fromCharCode(65 + cell.column)}${cell.row + 1}`];
      if (typed === undefined) return cell;
      const { content: _, ...rest } = cell;
      return typed === null ? rest : { ...rest, content: contentOf(typed) };
    }),
  }));
  const values = await calculate(edited, { script, metadata: metadataText });
  return (sheet: string, address: string) =>
    values[edited.findIndex(({ name }) => name === sheet)]?.[Number(address.slice(1)) - 1]?.[
      address.charCodeAt(0) - 65
    ] ?? null;
}
