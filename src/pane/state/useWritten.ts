import { useMemo, useState } from "react";
import { percent } from "../../runsheet/percent";
import type { RunPlan } from "../../runsheet/plan/runPlan";
import { type NewFactor, newFactors } from "../../runsheet/record/newFactors";
import { newLoss, type ShownLoss } from "../../runsheet/record/newLoss";
import { copiesOf } from "../../runsheet/record/runSheets";
import type { Log } from "../../runsheet/tables/runsLog";
import type { Vessels } from "../../runsheet/tables/vessels";
import { type Book, freshRun } from "../actions/book";
import { changeFactor } from "../actions/changeFactor";
import { type LogChoice, logPour } from "../actions/logPour";
import { changesOf, type Report, readRun, toPlainNumbers } from "../actions/writtenRun";
import { LOGGING } from "../words/logging";
import { FACTORS, LOSS, WRITTEN } from "../words/written";
import { withCount } from "./kept";
import type { useRunSheets } from "./useRunSheets";
import { useTakenBack } from "./useTakenBack";
import type { RunTask, Task, useTask } from "./useTask";

/** Writes a new run sheet. */
type Write = (task: Task) => Promise<{ name: string; plan: RunPlan; words: string }>;

type SetReport = (report: Report | undefined) => void;

/** The run sheets that are written, what is told about the chosen one, and what can be done with it. */
export function useWritten(
  book: Book,
  { sheets, sheet: chosen, choose }: ReturnType<typeof useRunSheets>,
  log: Log,
  vessels: Vessels,
  { run, forget }: Pick<ReturnType<typeof useTask>, "run" | "forget">,
  write: Write,
) {
  const [report, setReport] = useState<Report>();
  useTakenBack(sheets.length + log.lots.length, () => {
    setReport(undefined);
    forget();
  });
  const { settings } = book;
  const factors = useMemo(() => (settings ? newFactors(log, vessels, settings) : []), [log, vessels, settings]);
  const loss = useMemo(() => newLoss(log, settings?.loss), [log, settings?.loss]);
  if (!chosen) return undefined;
  const { name: sheet, lot } = chosen;
  const copies = copiesOf(chosen, sheets).map(({ name }) => name);
  return {
    sheets,
    sheet,
    lot,
    copies,
    choose,
    factors,
    loss: loss && lossChange(book, loss, run),
    // What was said of another sheet does not stand beside the buttons of this one.
    report: report?.sheet === sheet ? report : undefined,
    changeFactor: (factor: NewFactor) => run(FACTORS.heading, () => changeFactor(book, factor)),
    logPour: pourLogger(book, sheet, copies, run, setReport),
    ...sheetWork(book, sheet, run, write, { sheets, choose, log }, setReport),
  };
}

/** What is said of the loss, and the press that changes the setting. */
function lossChange({ settings, keep }: Book, { says, offer }: ShownLoss, run: RunTask) {
  if (offer === undefined || !settings) return { says, change: undefined };
  const words = LOSS.change(settings.loss, offer);
  const press = () =>
    run(LOSS.heading, async () => {
      keep((before) => ({ ...before, typed: { ...before.typed, loss: `${percent(offer)}%` } }));
      return LOSS.changed(offer);
    });
  return { says, change: { words, press } };
}

export type Written = NonNullable<ReturnType<typeof useWritten>>;

/** Logs the pour of a sheet; gives whether what was shown before is gone, or the pour is logged. */
function pourLogger(book: Book, sheet: string, copies: readonly string[], run: RunTask, setReport: SetReport) {
  return async (choice: LogChoice = {}): Promise<boolean> => {
    let isDone = choice.shown !== undefined;
    await run(LOGGING.log, async () => {
      setReport(undefined);
      const { report, words } = await logPour(book, sheet, copies, choice);
      setReport(report);
      isDone ||= words !== undefined;
      return words;
    });
    return isDone;
  };
}

/** What else is done with a sheet. */
function sheetWork(
  book: Book,
  sheet: string,
  run: RunTask,
  write: Write,
  { sheets, choose, log }: Pick<ReturnType<typeof useRunSheets>, "sheets" | "choose"> & { log: Log },
  setReport: SetReport,
) {
  const { host } = book;
  return {
    compare: () =>
      run(WRITTEN.compare, async () => {
        const fresh = await freshRun(book);
        setReport(changesOf(sheet, await readRun(host, sheet), fresh.run.plan));
        return undefined;
      }),
    rebuild: () =>
      run(WRITTEN.rebuild, async (task) => {
        const old = await readRun(host, sheet);
        const { name, plan, words } = await write(task);
        choose(name);
        // The new sheet stands for the old one, of which what is logged counts no more anyway.
        book.keep((before) => withCount(before, old.lot, false, sheets));
        setReport(changesOf(sheet, old, plan, { to: name, log }));
        return words;
      }),
    toPlain: () =>
      run(WRITTEN.toPlain, async () => {
        const words = await toPlainNumbers(host, sheet);
        setReport(undefined);
        return words;
      }),
    print:
      host.print &&
      (() =>
        run(WRITTEN.print, async () => {
          await host.print?.(sheet);
          return undefined;
        })),
  };
}
