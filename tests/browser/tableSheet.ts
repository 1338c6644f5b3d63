import type { CellValue, Sheet } from "../../src/sheet/sheet";

/** A table on a sheet of its own. */
export const tableSheet = (name: string, rows: CellValue[][]): Sheet => ({
  name,
  widths: [],
  cells: rows.flatMap((row, r) =>
    row.map((value, column) => ({
      row: r,
      column,
      content: typeof value === "number" ? { number: value } : { text: String(value) },
    })),
  ),
  tables: [{ name, row: 0, column: 0, headings: (rows[0] ?? []).map(String), rows: rows.length - 1 }],
});
