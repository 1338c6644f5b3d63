import type { Book, BookCell, BookRow, BookSheet, BookTable } from "../book";
import { same } from "../same";

/**
 * A book whose tables are as the file format wants them: each heading is the text of its cell, not empty and not there
 * twice, and no two tables, nor a table and a name, are called the same. Tables that are as they were are left alone.
 */
export function settleTables(before: Book, now: Book): Book {
  const wasOf = (sheet: BookSheet): BookSheet | undefined => before.sheets.find(({ id }) => id === sheet.id);
  const isOld = (sheet: BookSheet, table: BookTable): boolean =>
    wasOf(sheet)?.tables.some((one) => same(one, table)) ?? false;
  const keepsName = (sheet: BookSheet, { name }: BookTable): boolean =>
    wasOf(sheet)?.tables.some((one) => one.name === name) ?? false;
  const kept = now.sheets.flatMap((sheet) => sheet.tables.filter((table) => keepsName(sheet, table)));
  const taken = new Set([...now.names, ...kept].map(({ name }) => name.toLowerCase()));
  const sheets = now.sheets.map((sheet) =>
    sheet.tables.reduce((done, table, i) => {
      const isUntouched = isOld(sheet, table) && same(headingRow(wasOf(sheet), table), headingRow(sheet, table));
      if (isUntouched) return done;
      return withTable(done, i, keepsName(sheet, table) ? table : { ...table, name: ownName(table.name, taken) });
    }, sheet),
  );
  return { ...now, sheets };
}

const headingRow = (sheet: BookSheet | undefined, { area }: BookTable): BookRow | undefined =>
  sheet?.rows.find(({ row }) => row === area.row);

function ownName(wished: string, taken: Set<string>, joint = "_"): string {
  let name = wished;
  for (let i = 2; taken.has(name.toLowerCase()); i++) name = `${wished}${joint}${i}`;
  taken.add(name.toLowerCase());
  return name;
}

function withTable(sheet: BookSheet, at: number, table: BookTable): BookSheet {
  const row = headingRow(sheet, table);
  const cellAt = (i: number): BookCell | undefined => row?.cells.find(({ column }) => column === table.area.column + i);
  const taken = new Set<string>();
  const columns = table.columns.map((column, i) => {
    if (!table.hasHeadings) return column;
    const value = cellAt(i)?.value;
    const text = typeof value === "string" || typeof value === "number" ? String(value) : column.heading;
    return { ...column, heading: ownName(text.trim() === "" ? `Column${i + 1}` : text, taken, "") };
  });
  const tables = sheet.tables.map((one, i) => (i === at ? { ...table, columns } : one));
  if (!table.hasHeadings) return { ...sheet, tables };
  const headings = columns.map(({ heading }, i) => {
    const cell = cellAt(i) ?? { column: table.area.column + i, style: row?.style ?? 0, value: null };
    const isText = cell.value === heading && cell.formula === undefined && !cell.spilled;
    return isText ? cell : { column: cell.column, style: cell.style, value: heading };
  });
  const others = (row?.cells ?? []).filter((cell) => !headings.some(({ column }) => column === cell.column));
  const cells = [...others, ...headings].sort((a, b) => a.column - b.column);
  const rows = [...sheet.rows.filter((one) => one !== row), { ...row, row: table.area.row, cells }];
  return { ...sheet, tables, rows: rows.sort((a, b) => a.row - b.row) };
}
