import { useMemo, useState } from "react";
import type { Book } from "../actions/book";
import { writeTrace } from "../actions/writeTrace";
import { find, namesFor, type Sought, type Traced, tracedOn } from "../tracing/traced";
import { TRACING } from "../words/tracing";
import type { ReadTables } from "./useTables";
import type { RunTask } from "./useTask";

/** The record is sorted only while somebody looks. */
function useTraced({ kept }: Book, read: ReadTables, isShown: boolean): { traced?: Traced; refused?: string } {
  return useMemo(() => {
    if (!isShown || !kept) return {};
    try {
      return { traced: tracedOn(read, kept, kept.choices.unit) };
    } catch (error) {
      return { refused: (error as Error).message };
    }
  }, [isShown, read, kept]);
}

/** What lot or run is looked for, what is found of it, and the sheets that tell it. */
export function useTracing(book: Book, read: ReadTables, isShown: boolean, run: RunTask) {
  const [sought, setSought] = useState<Sought>({ item: "", lot: "", run: "" });
  const { traced, refused } = useTraced(book, read, isShown);
  const found = useMemo(() => traced && find(traced, sought), [traced, sought]);
  const names = useMemo(() => traced && namesFor(traced, sought), [traced, sought]);
  return {
    sought,
    seek: (field: keyof Sought, text: string) => setSought((before) => ({ ...before, [field]: text })),
    names: { items: names?.items ?? [], lots: names?.lots ?? [], runs: traced?.runs ?? [] },
    found,
    amountOf: traced?.amountOf ?? (() => ""),
    refused,
    writeRecall: () => run(TRACING.writeRecall, (task) => writeTrace(book, sought, "recall", task)),
    writeContents: () => run(TRACING.writeContents, (task) => writeTrace(book, sought, "contents", task)),
  };
}

export type Tracing = ReturnType<typeof useTracing>;
