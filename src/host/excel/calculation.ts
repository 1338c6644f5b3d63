import { StillCalculating } from "../host";

/** The waits, in milliseconds, before cells that Excel is still working on are read again. */
const WAITS = [100, 200, 400, 800, 1600, 3200, 4000, 4000];

/** Reads cells only when they are calculated, and knows who calculates. */
export class Calculation {
  /** Whether Excel calculates by itself after every change, as of the last reading. */
  isAutomatic = true;

  constructor(private readonly waits: readonly number[] = WAITS) {}

  /**
   * Reads in one sync; in two where Excel leaves calculating to the user, so that no cell shows an old result; and in
   * a few more while Excel or a function is still at work. Rejects when one is so after the last wait.
   * @param request queues what is to be read, values and types of the cells given back included; asked for each time,
   *   since what is used of a sheet may change by calculating
   */
  async read(context: Excel.RequestContext, request: () => Excel.Range): Promise<Excel.Range> {
    const { application } = context;
    const ask = (): Excel.Range => {
      application.load("calculationMode,calculationState");
      return request();
    };
    let cells = ask();
    await context.sync();
    this.isAutomatic = application.calculationMode === "Automatic";
    if (!this.isAutomatic) {
      application.calculate("Recalculate");
      cells = ask();
      await context.sync();
    }
    for (const wait of this.waits) {
      if (!this.isAtWork(application) && !isBusy(cells)) return cells;
      await new Promise((resolve) => setTimeout(resolve, wait));
      cells = ask();
      await context.sync();
    }
    if (this.isAtWork(application) || isBusy(cells)) throw new StillCalculating();
    return cells;
  }

  /** Where Excel leaves calculating to the user something may be pending for good. */
  private isAtWork({ calculationState }: Excel.Application): boolean {
    return calculationState === "Calculating" || (this.isAutomatic && calculationState === "Pending");
  }
}

const isBusy = (cells: Excel.Range): boolean =>
  !cells.isNullObject &&
  cells.values.some((row, r) => row.some((value, c) => value === "#BUSY!" && cells.valueTypes[r]?.[c] === "Error"));
