import type { SourceRows } from "../../host/host";
import type { FurtherTypeId, TableTypeId } from "../../runsheet/tables/registry";
import { addStarterTables, addTable } from "../actions/addTables";
import type { Book } from "../actions/book";
import { choosing, keyOf, leavingOut } from "../columns";
import { keyOfRows, type RowsLeft } from "../givenTables";
import { CHECK } from "../words/check";
import { OPENING } from "../words/opening";
import { TABLES } from "../words/tables";
import type { useTables } from "./useTables";
import type { RunTask } from "./useTask";

/** What can be done with tables: chosen, added, and decided about where a problem asks. */
export function useTableWork(
  book: Book,
  choose: ReturnType<typeof useTables>["choose"],
  setRowsLeft: (change: (before: RowsLeft) => RowsLeft) => void,
  run: RunTask,
  onError: (error: unknown) => void,
) {
  const { host, keep, refresh } = book;
  const choices = {
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
    begin: () =>
      run(OPENING.add, async () => {
        await addStarterTables(book);
        await choose("pour", undefined);
        return undefined;
      }),
    add: (kind: FurtherTypeId) =>
      run(TABLES.addEmpty(kind), async () => {
        await addTable(book, kind);
        await choose(kind, undefined);
        return undefined;
      }),
  };
  const decisions = {
    /** Rows right below a table become rows of it, or stay out. */
    takeIn: (table: SourceRows, kind: TableTypeId, rows: number) =>
      run(CHECK.takeIn(rows, table.name), async () => {
        const { name, place } = table;
        if (name !== "") {
          await host.takeInRows(name, rows);
          await refresh();
        } else await choose(kind, { ...table, place: { ...place, rows: place.rows + rows } });
        return CHECK.takenIn(rows, name);
      }),
    leaveRows: (table: SourceRows, rows: number) =>
      setRowsLeft((before) => new Map(before).set(keyOfRows(table), rows)),
    /** A column that nobody reads stays unread. */
    leaveColumn: (kind: TableTypeId, table: string, heading: string) =>
      keep((before) => ({ ...before, leftOut: leavingOut(before.leftOut, kind, table, heading) })),
  };
  return { choices, decisions };
}
