import { useMemo, useState } from "react";
import type { Host, Place } from "../../host/host";
import { isError } from "../../runsheet/problem";
import { NO_LOG } from "../../runsheet/tables/runsLog";
import type { Book } from "../actions/book";
import { writeRun } from "../actions/writeRun";
import { givenTables, logOn, type RowsLeft, vesselsOf } from "../givenTables";
import { groupProblems } from "../groupProblems";
import type { Planner } from "../planner";
import { besideOf } from "../receiving/planReceipt";
import { serialOf, today } from "../today";
import type { View } from "../words/views";
import { WRITING } from "../words/writing";
import { type Kept, withCount } from "./kept";
import { useApproving } from "./useApproving";
import { useOpenSheets } from "./useOpenSheets";
import { usePlan } from "./usePlan";
import { useReceiving } from "./useReceiving";
import { useRunSheets } from "./useRunSheets";
import { useSeen } from "./useSeen";
import { useSeries } from "./useSeries";
import { useSettings } from "./useSettings";
import { useShelf } from "./useShelf";
import { type ReadTables, useTables } from "./useTables";
import { useTableWork } from "./useTableWork";
import { type Task, useTask } from "./useTask";
import { useTracing } from "./useTracing";
import { useWritten } from "./useWritten";

/** All that the pane shows, and all that can be done in it. */
export function usePane(host: Host, planner: Planner) {
  const { running, message, run, forget, onError } = useTask();
  const [view, setView] = useState<View>("plan");
  const [date, setDate] = useState(today);
  const [rowsLeft, setRowsLeft] = useState<RowsLeft>(new Map());
  const { kept, keep, wrong, settings } = useSettings(host, onError);
  const { sources, tables, refresh, choose } = useTables(host, onError);
  const runSheets = useRunSheets(host, sources, running?.share !== undefined, onError);
  const { given, vessels, log } = useGiven(tables, kept, rowsLeft);
  const openSheets = useOpenSheets(host, runSheets, tables, kept, onError);
  const planned = usePlan(planner, given, settings, openSheets.open, kept?.counts, onError);
  const groups = useMemo(() => groupProblems(planned?.run.problems ?? []), [planned]);

  const book: Book = { host, planner, kept, settings, rowsLeft, keep, refresh, openSheets: openSheets.readNow };
  const serial = serialOf(date);
  const write = (task: Task) => writeRun(book, serial, task);
  const written = useWritten(book, runSheets, log, vessels, { run, forget }, write);
  const { choices, decisions } = useTableWork(book, choose, setRowsLeft, run, onError);
  // The stock is read only while somebody looks, and once for all that is told of it.
  const isStock = view === "stock";
  const beside = useMemo(() => (isStock && kept ? besideOf(tables, kept) : undefined), [isStock, tables, kept]);
  const receiving = useReceiving(book, beside, run);
  const shelf = useShelf(book, beside);
  const tracing = useTracing(book, tables, view === "trace", run);
  const series = useSeries(book, tables, view === "tests", openSheets.open, run, onError);
  const seen = useSeen(book, tables, view === "tests", run);
  const approving = useApproving(book, tables, view === "tests", run);
  const stops = groups.filter(({ problem }) => isError(problem)).length;

  return {
    view,
    /** What a press in another view came to says nothing of this one. */
    setView: (next: View) => {
      if (next !== view) forget();
      setView(next);
    },
    running,
    message,
    planned,
    written,
    receiving,
    shelf,
    tracing,
    series,
    seen,
    approving,
    check: { groups, stops, checks: groups.length - stops },
    fields: { kept, keep, wrong, date, setDate, isWrong: Object.keys(wrong).length > 0 || serial === undefined },
    tables: { sources, read: tables, given, ...choices },
    decisions,
    write: () => run(WRITING.under, async (task) => (await write(task)).words),
    /** Says whether what a run takes counts as planned. */
    count: (lot: string, counts: boolean) => keep((before) => withCount(before, lot, counts, runSheets.sheets)),
    show: (place: Place) => host.select(place).catch(onError),
  };
}

export type PaneState = ReturnType<typeof usePane>;

/** The tables as a run is built from them. What is typed into the settings leaves them as they are. */
function useGiven(read: ReadTables, kept: Kept | undefined, rowsLeft: RowsLeft) {
  const { columns, leftOut } = kept ?? {};
  const unit = kept?.choices.unit;
  const byHand = useMemo(() => columns && leftOut && { columns, leftOut }, [columns, leftOut]);
  const given = useMemo(() => byHand && givenTables(read, byHand, rowsLeft), [read, byHand, rowsLeft]);
  const vessels = useMemo(() => vesselsOf(read, byHand, unit), [read, byHand, unit]);
  const log = useMemo(() => (byHand ? logOn(read, byHand) : NO_LOG), [read, byHand]);
  return { given, vessels, log };
}
