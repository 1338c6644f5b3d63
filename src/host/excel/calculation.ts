/** The waits, in milliseconds, before cells that Excel is still working on are read again. */
const WAITS = [100, 200, 400, 800];

/** Reads cells only when they are calculated, and knows who calculates. */
export class Calculation {
  /** Whether Excel calculates by itself after every change, as of the last reading. */
  isAutomatic = true;

  /**
   * Reads in one sync; in two where Excel leaves calculating to the user, so that no cell shows an old result; and in
   * a few more while a function is still at work and its cell shows #BUSY!, which after the last wait is what it shows.
   * @param request queues what is to be read, values and types of the cells given back included; asked for each time,
   *   since what is used of a sheet may change by calculating
   */
  async read(context: Excel.RequestContext, request: () => Excel.Range): Promise<Excel.Range> {
    const { application } = context;
    application.load("calculationMode");
    let cells = request();
    await context.sync();
    this.isAutomatic = application.calculationMode === "Automatic";
    if (!this.isAutomatic) {
      application.calculate("Recalculate");
      cells = request();
      await context.sync();
    }
    for (const wait of WAITS) {
      if (!isBusy(cells)) break;
      await new Promise((resolve) => setTimeout(resolve, wait));
      cells = request();
      await context.sync();
    }
    return cells;
  }
}

const isBusy = (cells: Excel.Range): boolean =>
  !cells.isNullObject &&
  cells.values.some((row, r) => row.some((value, c) => value === "#BUSY!" && cells.valueTypes[r]?.[c] === "Error"));
