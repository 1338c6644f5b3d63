import { STARTUP } from "../settingsKeys";
import type { Runs } from "./functionRuns";
import { sentence } from "./sentences";

/** How long Excel may take to answer. */
const PATIENCE = 10_000;

/**
 * Waits for Office; gives whether this page runs inside Excel.
 * @param onSilence called when no answer has come for long; one that comes later counts all the same
 */
export async function isInExcel(onSilence: () => void, patience = PATIENCE): Promise<boolean> {
  const silence = setTimeout(onSilence, patience);
  const { host } = await Office.onReady();
  clearTimeout(silence);
  return host === Office.HostType.Excel;
}

/** What the workbook keeps of how the user wants it to be opened. */
type Wish = "with" | "without";

/**
 * Whether Excel loads the add-in whenever a workbook is opened: else its formulas would show old results until somebody
 * opens the pane. The mark is in the file, and whoever opens it without the add-in is told of an error; so a workbook
 * gets it only once one of our functions has run in it.
 */
export class StartUp {
  constructor(private readonly runs: Runs) {}

  /** Marks the workbook once a function has run, unless the user has said no. */
  follow(): void {
    if (this.runs.count > 0) {
      this.mark();
      return;
    }
    const stop = this.runs.onDelivered(() => {
      stop();
      this.mark();
    });
  }

  /** Whether the user wants the workbook to open without the add-in. */
  isRefused(): Promise<boolean> {
    return Excel.run(async (context) => {
      const setting = context.workbook.settings.getItemOrNullObject(STARTUP).load("value");
      await context.sync();
      return !setting.isNullObject && setting.value === ("without" satisfies Wish);
    });
  }

  /** Takes the mark away, for good. */
  refuse(): Promise<void> {
    return this.wish("without", Office.StartupBehavior.none);
  }

  /** Marks the workbook again. */
  allow(): Promise<void> {
    return this.wish("with", Office.StartupBehavior.load);
  }

  private async wish(wish: Wish, behavior: Office.StartupBehavior): Promise<void> {
    try {
      // First what Excel is more likely to refuse: nothing is kept then of a wish that was not fulfilled.
      await Office.addin.setStartupBehavior(behavior);
      await Excel.run(async (context) => {
        context.workbook.settings.add(STARTUP, wish);
        await context.sync();
      });
    } catch (error) {
      throw sentence("Excel could not change how this workbook is opened", error);
    }
  }

  private mark(): void {
    // Where Excel refuses (a workbook open for reading only), the functions still load with the pane.
    this.isRefused()
      .then((isRefused) => {
        if (!isRefused) return Office.addin.setStartupBehavior(Office.StartupBehavior.load);
      })
      .catch(() => {});
  }
}
