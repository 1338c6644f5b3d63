import type { CellValue, Place } from "./host";

/**
 * How many rows right below a block hold something in its columns and are no part of it: down to the first blank one,
 * or to the first row of another table.
 * @param rowAt the cells of a row of the sheet in the block's columns
 */
export function rowsBelow(
  block: Place,
  tables: readonly Place[],
  rowAt: (row: number) => readonly CellValue[] | undefined,
): number {
  const first = block.row + block.rows;
  // A selection may be a part of a table: the rest of that table's rows belongs to what may have been meant.
  const others = tables.filter((table) => shareColumns(table, block) && !shareRows(table, block));
  let row = first;
  while (rowAt(row)?.some((cell) => cell !== null) && !others.some((table) => shareRows(table, { row, rows: 1 })))
    row++;
  return row - first;
}

const shareColumns = (a: Place, b: Place): boolean =>
  a.sheet === b.sheet && a.column < b.column + b.columns && b.column < a.column + a.columns;

const shareRows = (a: Pick<Place, "row" | "rows">, b: Pick<Place, "row" | "rows">): boolean =>
  a.row < b.row + b.rows && b.row < a.row + a.rows;

/** Refuses to take in more rows than stand below a table: they may have been moved or deleted since they were shown. */
export function refuseMissing(table: string, wanted: number, below: number): void {
  if (wanted <= below) return;
  const there = below === 0 ? "No row stands" : below === 1 ? "Only 1 row stands" : `Only ${below} rows stand`;
  throw new Error(`${there} right below the table ${table} now. Check it, then try again.`);
}
