import { ICommandService, type Injector, IUniverInstanceService, UniverInstanceType } from "@univerjs/core";
import { IActiveDirtyManagerService, SetFormulaCalculationStartMutation } from "@univerjs/engine-formula";
import { FormulaCalculationSessionService, SetRangeValuesMutation } from "@univerjs/preset-sheets-core";
import { StillCalculating } from "../host";

/** Nothing waits longer than this, in milliseconds, for a calculation that shows no progress. */
const PATIENCE = 15_000;

/**
 * Patience is counted in waits of this length, not by the clock: on a busy machine the page stands still for seconds,
 * and what it does when it goes on must be heard first.
 */
const WAIT = 1000;

/** One that an edit has stopped is looked at again so soon. */
const AGAIN = 50;

/** Knows whether values are still to be calculated. Univer itself cannot say at once that nothing is. */
export class Calculation {
  /** Changes that formulas may depend on, and how many of them a calculation has taken up. The first is an opening. */
  #changes = 1;
  #taken = 0;
  /** Whether a workbook was opened since a calculation began last: one always begins then, if not at once. */
  #isOpened = false;
  readonly #session: Pick<FormulaCalculationSessionService, "state" | "waitForLatestApplied">;

  constructor(
    injector: Pick<Injector, "get">,
    private readonly patience = PATIENCE,
  ) {
    this.#session = injector.get(FormulaCalculationSessionService);
    const dirty = injector.get(IActiveDirtyManagerService);
    const opened = injector.get(IUniverInstanceService).getTypeOfUnitAdded$(UniverInstanceType.UNIVER_SHEET);
    opened.subscribe(() => {
      this.#changes++;
      this.#isOpened = true;
    });
    injector.get(ICommandService).onCommandExecuted(({ id }, options) => {
      if (id === SetFormulaCalculationStartMutation.id) {
        this.#taken = this.#changes;
        this.#isOpened = false;
      } else if (dirty.get(id) && !(id === SetRangeValuesMutation.id && options?.onlyLocal)) this.#changes++;
    });
  }

  /** Notes that all values are as the formulas make them already, whatever was changed so far. */
  known(): void {
    this.#taken = this.#changes;
    this.#isOpened = false;
  }

  /** Resolves when all values are as the formulas make them; rejects when patience ends before. */
  async settled(): Promise<void> {
    const waits = this.patience / WAIT;
    let left = waits;
    while (!this.#isSettled()) {
      if (left <= 0) throw new StillCalculating();
      const { state } = this.#session;
      // The session takes one that was stopped for done, even when it has begun anew already.
      if (state.stopped) {
        left -= AGAIN / WAIT;
        await new Promise((next) => setTimeout(next, AGAIN));
        if (this.#session.state !== state) left = waits;
        continue;
      }
      left--;
      const changes = this.#changes;
      const isRunning = state.started && !state.resultApplied;
      const isDone = await this.#session.waitForLatestApplied(WAIT).then(
        () => true,
        () => false,
      );
      // No calculation has begun for what has changed, though there was time: there was nothing to calculate. One that
      // has just ended says nothing of what was changed while it ran.
      if (isDone && !isRunning && this.#taken < changes && !this.#isOpened) this.#taken = changes;
      // Each step of a calculation makes a new state.
      if (this.#session.state !== state) left = waits;
    }
  }

  #isSettled(): boolean {
    const { started, stopped, resultApplied } = this.#session.state;
    return this.#taken === this.#changes && (!started || (resultApplied && !stopped));
  }
}
