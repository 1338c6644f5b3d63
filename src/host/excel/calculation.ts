import { StillCalculating } from "../host";
import type { Runs } from "./functionRuns";

/** The waits, in milliseconds, before cells that Excel is still working on are read again. */
const WAITS = [100, 200, 400, 800, 1600, 3200, 4000, 4000];

/** What a read waits for. */
const WAITING = {
  excel: "Waiting for Excel, which is still calculating the workbook.",
  functions: "Waiting for the answers of the POUR functions, which are on their way to their cells.",
} as const;

/** Reads cells only when they are calculated, and knows who calculates. */
export class Calculation {
  /** Whether Excel calculates by itself after every change, as of the last reading. */
  isAutomatic = true;
  /** How many reads wait. */
  private waiting = 0;

  /** @param say is told what a read waits for, and undefined when it waits no more */
  constructor(
    private readonly runs: Runs,
    private readonly say: (what: string | undefined) => void = () => {},
    private readonly waits: readonly number[] = WAITS,
  ) {}

  /**
   * Reads in one sync; in two where Excel leaves calculating to the user, so that no cell shows an old result; and in
   * a few more while Excel or a function is still at work, or an answer on its way. Rejects when one is so after the
   * last wait.
   * @param request queues what is to be read, values and types of the cells given back included; asked for each time,
   *   since what is used of a sheet may change by calculating
   */
  async read(context: Excel.RequestContext, request: () => Excel.Range): Promise<Excel.Range> {
    const { application } = context;
    const ask = async (): Promise<{ cells: Excel.Range; isQuiet: boolean }> => {
      application.load("calculationMode,calculationState");
      const cells = request();
      // A function that runs in the meantime may have its answer in the cell or not.
      const { count, areDelivered } = this.runs;
      await context.sync();
      return { cells, isQuiet: areDelivered && this.runs.count === count };
    };
    let isWaiting = false;
    const wait = (isAtWork: boolean, milliseconds: number): Promise<unknown> => {
      if (!isWaiting) this.waiting++;
      isWaiting = true;
      this.say(isAtWork ? WAITING.excel : WAITING.functions);
      return isAtWork ? new Promise((resolve) => setTimeout(resolve, milliseconds)) : this.runs.delivered();
    };
    try {
      let read = await ask();
      this.isAutomatic = application.calculationMode === "Automatic";
      if (!this.isAutomatic) {
        application.calculate("Recalculate");
        read = await ask();
      }
      for (const milliseconds of this.waits) {
        const isAtWork = this.isAtWork(application) || isBusy(read.cells);
        if (!isAtWork && read.isQuiet) return read.cells;
        await wait(isAtWork, milliseconds);
        read = await ask();
      }
      if (this.isAtWork(application) || isBusy(read.cells) || !read.isQuiet) throw new StillCalculating();
      return read.cells;
    } finally {
      if (isWaiting && --this.waiting === 0) this.say(undefined);
    }
  }

  /** Where Excel leaves calculating to the user something may be pending for good. */
  private isAtWork({ calculationState }: Excel.Application): boolean {
    return calculationState === "Calculating" || (this.isAutomatic && calculationState === "Pending");
  }
}

/**
 * Has calculated what was written while calculation was suspended, as who suspends it has to. For a sync after that one:
 * until then it is suspended, and nothing says whether it hears what is asked for.
 */
export const calculateAgain = ({ application }: Excel.RequestContext): void => application.calculate("Recalculate");

const isBusy = (cells: Excel.Range): boolean =>
  !cells.isNullObject &&
  cells.values.some((row, r) => row.some((value, c) => value === "#BUSY!" && cells.valueTypes[r]?.[c] === "Error"));
