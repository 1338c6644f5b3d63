import { ICommandService, type Injector } from "@univerjs/core";
import { IActiveDirtyManagerService, SetFormulaCalculationStartMutation } from "@univerjs/engine-formula";
import { FormulaCalculationSessionService, SetRangeValuesMutation } from "@univerjs/preset-sheets-core";
import { StillCalculating } from "../host";

/** However long a calculation takes, nothing waits longer than this. */
const PATIENCE = 15_000;

/** Knows whether values are still to be calculated. Univer itself cannot say at once that nothing is. */
export class Calculation {
  /** Changes that formulas may depend on, and how many of them a calculation has taken up. The first is the opening. */
  #changes = 1;
  #taken = 0;
  readonly #session: Pick<FormulaCalculationSessionService, "state" | "waitForLatestApplied">;

  constructor(
    injector: Pick<Injector, "get">,
    private readonly patience = PATIENCE,
  ) {
    this.#session = injector.get(FormulaCalculationSessionService);
    const dirty = injector.get(IActiveDirtyManagerService);
    injector.get(ICommandService).onCommandExecuted(({ id }, options) => {
      if (id === SetFormulaCalculationStartMutation.id) this.#taken = this.#changes;
      else if (dirty.get(id) && !(id === SetRangeValuesMutation.id && options?.onlyLocal)) this.#changes++;
    });
  }

  /** Resolves when all values are as the formulas make them; rejects when patience ends before. */
  async settled(): Promise<void> {
    const end = Date.now() + this.patience;
    while (!this.#isSettled()) {
      const left = end - Date.now();
      if (left <= 0) throw new StillCalculating();
      const changes = this.#changes;
      await this.#session.waitForLatestApplied(left).catch(() => undefined);
      // No calculation has begun for what has changed, though there was time: there was nothing to calculate.
      if (this.#taken < changes && Date.now() < end) this.#taken = changes;
    }
  }

  #isSettled(): boolean {
    const { started, resultApplied } = this.#session.state;
    return this.#taken === this.#changes && (!started || resultApplied);
  }
}
