import { sheetName } from "../../sheet/sheetName";
import type { Book, Remark } from "../book";
import { renamedBook } from "./renamedBook";

/**
 * A book with such names of sheets and tables as files can hold, its formulas with them. A name that the file had
 * stays as it is.
 * @param others names of sheets that the book does not tell of
 */
export function withPermittedNames(
  before: Book,
  now: Book,
  others: readonly string[],
): { readonly book: Book; readonly lost: readonly Remark[] } {
  const old = new Map(before.sheets.map(({ id, name }) => [id, name]));
  const kept = now.sheets.filter(({ id, name }) => old.get(id) === name);
  const taken = [...others, ...kept.map(({ name }) => name)];
  const sheets = now.sheets.map((sheet) => {
    if (kept.includes(sheet)) return sheet;
    const name = sheetName(sheet.name, taken);
    taken.push(name);
    return { ...sheet, name };
  });
  const renamedSheets = new Map(
    now.sheets.flatMap(({ name }, i) => {
      const given = sheets[i]?.name ?? name;
      return given === name ? [] : [[name, given] as const];
    }),
  );
  const oldTables = new Set(before.sheets.flatMap(({ tables }) => tables.map(({ name }) => name)));
  const renamedTables = new Map(
    now.sheets.flatMap(({ tables }) =>
      tables.flatMap(({ name }) => {
        const given = oldTables.has(name) ? name : tableName(name);
        return given === name ? [] : [[name, given] as const];
      }),
    ),
  );
  const named = {
    ...now,
    sheets: sheets.map((sheet) => ({
      ...sheet,
      tables: sheet.tables.map((table) => ({ ...table, name: renamedTables.get(table.name) ?? table.name })),
    })),
  };
  const lost = [...renamedSheets, ...renamedTables].map(([name, given]) => ({
    sheet: renamedSheets.has(name) ? name : null,
    what: `the name "${name}"`,
    consequence: `Workbook files cannot hold it: there it is "${given}".`,
  }));
  return { book: lost.length === 0 ? now : renamedBook(named, renamedSheets, renamedTables), lost };
}

/** Letters, digits and low lines; nothing that would be read as a cell. */
function tableName(wished: string): string {
  const tidy = wished.replace(/[^\p{L}\p{N}_.]/gu, "_");
  return /^[\p{L}_]/u.test(tidy) && !/^(?:[A-Z]{1,3}\d+|R\d*C\d*|[RC])$/i.test(tidy) ? tidy : `_${tidy}`;
}
