import type { LogTable } from "../../../src/runsheet/record/logAddition";
import { readTable } from "../../../src/runsheet/tables/readTables";
import { matchColumns } from "../../../src/runsheet/tables/registry";
import { type Log, NO_LOG } from "../../../src/runsheet/tables/runsLog";
import type { CellValue } from "../../../src/sheet/sheet";

interface Cells {
  readonly headings: readonly string[];
  readonly rows: readonly (readonly CellValue[])[];
}

/** A runs log as the pane finds it, its columns matched by their headings. */
export const logTable = ({ headings, rows }: Cells): LogTable => ({
  ...{ type: "log", name: "RunsLog", headings, rows },
  columns: matchColumns("log", headings),
});

export const readLog = (cells: Cells): Log => readTable(logTable(cells), "g") ?? NO_LOG;
