import { useMemo, useState } from "react";
import type { Book } from "../actions/book";
import { writeSeen } from "../actions/writeSeen";
import { seenBeside } from "../burning/seenBeside";
import { SEEN } from "../words/seen";
import { WRITING } from "../words/writing";
import type { ReadTables } from "./useTables";
import type { RunTask } from "./useTask";

/** What the burn tests show, series by series, and the press that writes one on a sheet. Read only while somebody looks. */
export function useSeen(book: Book, read: ReadTables, isShown: boolean, run: RunTask) {
  const { kept, settings } = book;
  const seen = useMemo(
    () => (isShown && kept && settings ? seenBeside(read, kept, settings) : undefined),
    [isShown, read, kept, settings],
  );
  /** What the maker opened or shut stays so; else the last series of which anything is read is open. */
  const [toggled, setToggled] = useState<Readonly<Record<string, boolean>>>({});
  const first = (seen?.series.find(({ isBegun }) => isBegun) ?? seen?.series[0])?.name;
  return {
    seen,
    unit: settings?.unit ?? "g",
    refused: kept && !settings ? WRITING.fixSettings : undefined,
    isOpen: (name: string): boolean => toggled[name] ?? name === first,
    setOpen: (name: string, isOpen: boolean) => setToggled((before) => ({ ...before, [name]: isOpen })),
    /** @param name of the series */
    write: (name: string) => run(SEEN.write, (task) => writeSeen(book, name, task)),
  } as const;
}

export type SeenState = ReturnType<typeof useSeen>;
