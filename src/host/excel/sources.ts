import type { CellValue, Place, Source, SourceRows } from "../host";

interface Parts {
  readonly table: Excel.Table;
  readonly header: Excel.Range;
  readonly body: Excel.Range;
}

/** A table's heading and rows, asked for; a total row belongs to neither. */
export function partsOf(table: Excel.Table): Parts {
  return {
    table,
    header: table.getHeaderRowRange().load("values,rowIndex,columnIndex,columnCount"),
    body: table.getDataBodyRange().load("rowCount"),
  };
}

export function sourceOf({ table, header, body }: Parts): Source {
  return {
    name: table.name,
    place: {
      sheet: table.worksheet.name,
      row: header.rowIndex,
      column: header.columnIndex,
      rows: 1 + body.rowCount,
      columns: header.columnCount,
    },
    headings: (header.values[0] ?? []).map(String),
  };
}

export function cellValues(range: Excel.Range): CellValue[][] {
  return range.values.map((row, r) => row.map((value, c) => cellValue(value, range.valueTypes[r]?.[c])));
}

function cellValue(value: unknown, type: string | undefined): CellValue {
  if (value === "" || value === null || value === undefined) return null;
  if (type === "Error") return { error: String(value) };
  return typeof value === "number" || typeof value === "boolean" ? value : String(value);
}

/** Cells whose first row is the heading. */
export function headed(place: Place, [first = [], ...rows]: CellValue[][]): SourceRows {
  const headings = first.map((cell) => (cell === null ? "" : typeof cell === "object" ? cell.error : String(cell)));
  return { name: "", place, headings, rows };
}
