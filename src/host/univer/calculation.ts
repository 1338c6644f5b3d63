import { ICommandService, type Injector } from "@univerjs/core";
import { IActiveDirtyManagerService, SetFormulaCalculationStartMutation } from "@univerjs/engine-formula";
import { FormulaCalculationSessionService, SetRangeValuesMutation } from "@univerjs/preset-sheets-core";

/** However long a calculation takes, nothing waits longer than this. */
const PATIENCE = 15_000;

/** Knows whether values are still to be calculated. Univer itself cannot say at once that nothing is. */
export class Calculation {
  /** Changes that formulas may depend on, and how many of them a calculation has taken up. The first is the opening. */
  #changes = 1;
  #taken = 0;
  readonly #session: FormulaCalculationSessionService;

  constructor(injector: Injector) {
    this.#session = injector.get(FormulaCalculationSessionService);
    const dirty = injector.get(IActiveDirtyManagerService);
    injector.get(ICommandService).onCommandExecuted(({ id }, options) => {
      if (id === SetFormulaCalculationStartMutation.id) this.#taken = this.#changes;
      else if (dirty.get(id) && !(id === SetRangeValuesMutation.id && options?.onlyLocal)) this.#changes++;
    });
  }

  /** Resolves when all values are as the formulas make them, or patience ends. */
  async settled(): Promise<void> {
    const end = Date.now() + PATIENCE;
    while (Date.now() < end) {
      const { started, resultApplied } = this.#session.state;
      if (this.#taken === this.#changes && (!started || resultApplied)) return;
      const changes = this.#changes;
      await this.#session.waitForLatestApplied(end - Date.now()).catch(() => undefined);
      // No calculation has begun for what has changed: there was nothing to calculate.
      if (this.#taken < changes) this.#taken = changes;
    }
  }
}
