import { useMemo, useState } from "react";
import type { Host, Place, SourceRows } from "../../host/host";
import { isError } from "../../runsheet/problem";
import type { FurtherTypeId, TableTypeId } from "../../runsheet/tables/registry";
import { choosing, keyOf, leavingOut } from "../columns";
import { keyOfRows, type RowsLeft, vesselsOf } from "../givenTables";
import { groupProblems } from "../groupProblems";
import type { Planner } from "../planner";
import { serialOf, today } from "../today";
import { CHECK } from "../words/check";
import { OPENING } from "../words/opening";
import { TABLES } from "../words/tables";
import { WRITING } from "../words/writing";
import { addStarterTables, addTable } from "../work/addTables";
import type { Book } from "../work/book";
import { writeRun } from "../work/writeRun";
import { usePlan } from "./usePlan";
import { useRunSheets } from "./useRunSheets";
import { useSettings } from "./useSettings";
import { useTables } from "./useTables";
import { type Task, useTask } from "./useTask";
import { useWritten } from "./useWritten";

/** All that the pane shows, and all that can be done in it. */
export function usePane(host: Host, planner: Planner) {
  const { running, message, run, onError } = useTask();
  const [date, setDate] = useState(today);
  const [rowsLeft, setRowsLeft] = useState<RowsLeft>(new Map());
  const { kept, keep, wrong, settings } = useSettings(host, onError);
  const { sources, tables, refresh, choose } = useTables(host, onError);
  const runSheets = useRunSheets(host, sources, running?.share !== undefined, onError);
  const planned = usePlan(planner, tables, kept, settings, rowsLeft, onError);
  const groups = useMemo(() => groupProblems(planned?.run.problems ?? []), [planned]);
  const vessels = useMemo(() => vesselsOf(tables, kept), [tables, kept]);

  const book: Book = { host, planner, kept, settings, rowsLeft, keep, refresh };
  const serial = serialOf(date);
  const write = (task: Task) => writeRun(book, serial, task);
  const written = useWritten(book, runSheets, tables.log, vessels, run, write);
  const stops = groups.filter(({ problem }) => isError(problem)).length;

  const without = (words: string, work: () => Promise<unknown>) =>
    run(words, async () => {
      await work();
      return undefined;
    });

  return {
    host,
    running,
    message,
    settings,
    planned,
    written,
    check: { groups, stops, checks: groups.length - stops },
    fields: { kept, keep, wrong, date, setDate, isWrong: Object.keys(wrong).length > 0 || serial === undefined },
    write: () => run(WRITING.under, async (task) => (await write(task)).words),
    show: (place: Place) => host.select(place).catch(onError),
    tables: {
      sources,
      read: tables,
      choose: (kind: TableTypeId, name: string | null) => choose(kind, name).catch(onError),
      chooseColumn: (kind: TableTypeId, table: string, field: string, column: string | null) =>
        keep((before) => ({ ...before, columns: choosing(before.columns, kind, table, field, column) })),
      askAgain: (kind: TableTypeId, table: string) =>
        keep((before) => ({ ...before, leftOut: { ...before.leftOut, [keyOf(kind, table)]: [] } })),
      takeSelection: () =>
        run(TABLES.selection, async () => {
          await choose("pour", await host.selection());
          return TABLES.selectionTaken;
        }),
      begin: () => without(OPENING.add, () => addStarterTables(book).then(() => choose("pour", undefined))),
      add: (kind: FurtherTypeId) =>
        without(TABLES.addEmpty(kind), () => addTable(book, kind).then(() => choose(kind, undefined))),
    },
    decisions: {
      takeIn: (table: SourceRows, kind: TableTypeId, rows: number) =>
        run(CHECK.takeIn(rows, table.name), async () => {
          const { name, place } = table;
          if (name !== "") await host.takeInRows(name, rows);
          if (name !== "") await refresh();
          else await choose(kind, { ...table, place: { ...place, rows: place.rows + rows } });
          return CHECK.takenIn(rows, name);
        }),
      leaveRows: (table: SourceRows, rows: number) =>
        setRowsLeft((before) => new Map(before).set(keyOfRows(table), rows)),
      leaveColumn: (kind: TableTypeId, table: string, heading: string) =>
        keep((before) => ({ ...before, leftOut: leavingOut(before.leftOut, kind, table, heading) })),
    },
  };
}

export type PaneState = ReturnType<typeof usePane>;
