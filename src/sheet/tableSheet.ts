import { type ColumnWithChoices, choicesOf } from "./columnChoices";
import type { Cell, Content, Sheet } from "./sheet";

interface Column extends ColumnWithChoices {
  readonly width?: number;
  readonly format?: string;
}

/** A table that is only ever added to, with its first rows, on a sheet of its own. */
export function tableSheet(
  { name, table, columns }: { readonly name: string; readonly table: string; readonly columns: readonly Column[] },
  rows: readonly (readonly (Content | null)[])[],
): Sheet {
  const headings = columns.map(({ heading }) => heading);
  const cells: Cell[] = headings.map((text, column) => ({ row: 0, column, content: { text }, look: "heading" }));
  for (const [r, row] of rows.entries()) {
    for (const [column, content] of row.entries()) {
      const format = columns[column]?.format;
      cells.push({ row: r + 1, column, ...(format && { format }), ...(content && { content }) });
    }
  }
  return {
    name,
    widths: columns.map(({ width }) => width ?? 12),
    cells,
    tables: [{ name: table, row: 0, column: 0, headings, rows: rows.length, ...choicesOf(columns) }],
    frozenRows: 1,
  };
}
