import { contentsSheet, recallSheet, type TraceSettings } from "../../runsheet/stock/traceSheets";
import type { Task } from "../state/useTask";
import { serialOf, today } from "../today";
import { find, type Sought, tracedOn } from "../tracing/traced";
import { LOGGING } from "../words/logging";
import { TRACING } from "../words/tracing";
import type { Book } from "./book";

/** Writes what is found on a sheet of its own, by the tables as they are now; gives the words. */
export async function writeTrace(
  { host, kept, refresh }: Book,
  sought: Sought,
  what: "recall" | "contents",
  task: Task,
): Promise<string> {
  if (!kept) throw new Error(LOGGING.settingsUnread);
  const traced = tracedOn(await refresh(), kept, kept.choices.unit);
  const { recall, contents } = find(traced, sought);
  const settings: TraceSettings = {
    unit: traced.unit,
    paper: kept.choices.paper,
    today: serialOf(today()) as number,
  };
  const sheet =
    what === "recall" ? recall && recallSheet(recall, settings) : contents && contentsSheet(contents, settings);
  if (!sheet) throw new Error(TRACING.gone);
  return TRACING.written(await host.addSheet(sheet, task));
}
