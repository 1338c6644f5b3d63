import type { Cell, Content, Sheet } from "../../sheet/sheet";
import type { LogTable } from "./readLog";

/** The table that keeps what was really poured: rows are only ever added. */
export const RUNS_LOG = {
  table: "RunsLog",
  sheet: "Runs log",
  columns: [
    { heading: "Lot", width: 14 },
    { heading: "Date", width: 12, format: "yyyy-mm-dd" },
    { heading: "Scent", width: 20 },
    { heading: "Vessel", width: 20 },
    { heading: "Candles", width: 10, format: "0" },
    { heading: "Good", width: 8, format: "0" },
    { heading: "Yield", width: 8, format: "0%" },
    { heading: "Wax planned", width: 12, format: "0.0##" },
    { heading: "Wax actual", width: 12, format: "0.0##" },
    { heading: "Scent planned", width: 12, format: "0.0##" },
    { heading: "Scent actual", width: 12, format: "0.0##" },
    { heading: "Load as weighed (of wax)", before: "Real load of wax", width: 12, format: "0.00%" },
    { heading: "Weighed each", width: 12, format: "0.0##" },
    { heading: "Water weight", width: 12, format: "0.0##" },
    { heading: "Wax factor shown", width: 12, format: "0.0000" },
    { heading: "Weights in", width: 10 },
    { heading: "Remarks", width: 40 },
  ],
} as const;

/** The log with its first rows, on a sheet of its own. */
export function logSheet(rows: readonly (readonly (Content | null)[])[]): Sheet {
  const { table, sheet, columns } = RUNS_LOG;
  const cells: Cell[] = columns.map(({ heading }, column) => ({
    row: 0,
    column,
    content: { text: heading },
    look: "heading",
  }));
  for (const [r, row] of rows.entries()) {
    for (const [column, content] of row.entries()) {
      const format = (columns[column] as { format?: string }).format;
      cells.push({ row: r + 1, column, ...(format && { format }), ...(content && { content }) });
    }
  }
  return {
    name: sheet,
    widths: columns.map(({ width }) => width),
    cells,
    tables: [{ name: table, row: 0, column: 0, headings: columns.map(({ heading }) => heading), rows: rows.length }],
    frozenRows: 1,
  };
}

/** Whether a table is the runs log, whatever it is called now. */
export function isRunsLog({
  name,
  headings,
}: {
  readonly name: string;
  readonly headings: readonly string[];
}): boolean {
  return name === RUNS_LOG.table || TELLING.every((heading) => headings.includes(heading));
}
const TELLING = ["Lot", "Scent", "Vessel", "Good", "Wax planned", "Weighed each", "Water weight"] as const;

/** The headings to add rows under: those of a log that was begun with other words stay. */
export function logHeadings({ headings }: LogTable): string[] {
  return RUNS_LOG.columns.map((column) => {
    const before = "before" in column ? column.before : column.heading;
    return headings.includes(column.heading) || !headings.includes(before) ? column.heading : before;
  });
}
