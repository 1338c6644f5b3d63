import type { Addition } from "../../sheet/addition";
import type { Content } from "../../sheet/sheet";
import { tableSheet } from "../../sheet/tableSheet";
import { tableName } from "../tables/registry";
import { LOG_COLUMNS, type LogHeading, RUNS_LOG } from "../tables/runsLog";
import type { TableRows } from "../tables/tableRows";

/** The runs log as it stands in the workbook. */
export type LogTable = TableRows<"log"> & { readonly name: string };

/** A row of the log by its headings; what is left out stays blank. */
export type LogRow = Readonly<Partial<Record<LogHeading, Content>>>;

/** Rows for the log as it stands, or for a new one on a sheet of its own. */
export function logAddition(rows: readonly LogRow[], log: LogTable | undefined): Addition {
  if (!log)
    return tableSheet(
      { name: RUNS_LOG.name, table: tableName("log"), columns: LOG_COLUMNS },
      rows.map((row) => LOG_COLUMNS.map(({ heading }) => row[heading] ?? null)),
    );
  const kept = LOG_COLUMNS.filter((column) => !("isLater" in column) || log.columns[column.field] !== undefined);
  return {
    table: log.name,
    // A column that is missing is asked for by the words of today.
    headings: kept.map(({ field, heading }) => log.headings[log.columns[field] ?? -1] ?? heading),
    rows: rows.map((row) => kept.map(({ heading }) => row[heading] ?? null)),
  };
}
