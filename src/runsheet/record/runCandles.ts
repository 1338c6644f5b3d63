import type { RunCandles } from "../stock/trace";
import type { Log, LoggedRow } from "../tables/runsLog";

/** The candles of the log for a trace: without rows that a correction took back. */
export const runCandles = ({ rows }: Log): RunCandles[] =>
  rows.map(({ lot, scent, vessel, pots, candles, cells }) => {
    const number = (cell: LoggedRow["cells"][keyof LoggedRow["cells"]]) =>
      typeof cell === "number" ? cell : undefined;
    return { run: lot, date: number(cells.Date), scent, vessel, pots, candles, good: number(cells.Good) };
  });
