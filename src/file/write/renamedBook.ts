import type { Book } from "../book";
import { type Renames, renamedIn } from "./renames";

/** A book whose formulas call sheets and tables by other names. The sheets and tables themselves are as they were. */
export function renamedBook(book: Book, sheets: Renames, tables: Renames): Book {
  if (sheets.size === 0 && tables.size === 0) return book;
  const to = (formula: string): string => renamedIn(formula, sheets, tables);
  const inside = <T extends { readonly formula?: string }>(one: T): T =>
    one.formula === undefined ? one : { ...one, formula: to(one.formula) };
  const listed = <T extends { readonly formulas: readonly string[] }>(one: T): T => ({
    ...one,
    formulas: one.formulas.map(to),
  });
  return {
    ...book,
    names: book.names.map(inside),
    sheets: book.sheets.map((sheet) => ({
      ...sheet,
      rows: sheet.rows.map((row) => ({ ...row, cells: row.cells.map(inside) })),
      tables: sheet.tables.map((table) => ({
        ...table,
        columns: table.columns.map(inside).map((one) => (one.total ? { ...one, total: inside(one.total) } : one)),
      })),
      validations: sheet.validations.map(listed),
      conditions: sheet.conditions.map(listed),
      links: sheet.links.map((link) => (link.place === null ? link : { ...link, place: to(link.place) })),
    })),
  };
}
