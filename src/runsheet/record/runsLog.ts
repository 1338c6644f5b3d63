import type { Addition } from "../../sheet/addition";
import type { Content } from "../../sheet/sheet";
import { tableSheet } from "../../sheet/tableSheet";
import type { LogTable } from "./readLog";

/** The column that says which pots of a run a row is of. */
export const POTS = "Pots";

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
    // A log that was begun without these goes on without them.
    { heading: "Notes", width: 40, isLater: true },
    { heading: "Made by", width: 14, isLater: true },
    { heading: "Cured until", width: 12, format: "yyyy-mm-dd", isLater: true },
    { heading: "Loss shown", width: 10, format: "0.0%", isLater: true },
    { heading: POTS, width: 30, isLater: true },
  ],
} as const;

/** A row of the log by its headings; what is left out stays blank. */
export type LogRow = Readonly<Partial<Record<LogHeading, Content>>>;
export type LogHeading = (typeof RUNS_LOG.columns)[number]["heading"];

/** Rows for the log as it stands, or for a new one on a sheet of its own. */
export function logAddition(
  rows: readonly LogRow[],
  log: (LogTable & { readonly name: string }) | undefined,
): Addition {
  const { table, sheet, columns } = RUNS_LOG;
  if (!log)
    return tableSheet(
      { name: sheet, table, columns },
      rows.map((row) => columns.map(({ heading }) => row[heading] ?? null)),
    );
  const kept = columns.filter((column) => !("isLater" in column) || log.headings.includes(column.heading));
  return {
    table: log.name,
    headings: kept.map((column) => headingIn(log, column)),
    rows: rows.map((row) => kept.map(({ heading }) => row[heading] ?? null)),
  };
}

/** The heading of a column in a log that was begun with other words; one that is missing is asked for by today's. */
export function headingIn({ headings }: LogTable, column: (typeof RUNS_LOG.columns)[number]): string {
  const before = "before" in column ? column.before : column.heading;
  return headings.includes(column.heading) || !headings.includes(before) ? column.heading : before;
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
