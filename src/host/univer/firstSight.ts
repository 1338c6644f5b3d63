/** What lets the first workbook be seen computed sooner than Univer, version 0.25.1, would show it. */

import type { Injector } from "@univerjs/core";
import {
  DesktopUIController,
  FormulaCalculationSessionController,
  TriggerCalculationController,
} from "@univerjs/preset-sheets-core";

/** Univer waits so long, in milliseconds, before it puts the first workbook into the page. */
const WAIT = 300;

// The wait begins with the callback of the page's being there. All that waits so long then need not.
const { bootstrap } = DesktopUIController.prototype;
DesktopUIController.prototype.bootstrap = function (callback) {
  return bootstrap.call(this, (...elements) => {
    const { setTimeout } = window;
    const hurried = (run: TimerHandler, wait?: number, ...given: unknown[]) =>
      setTimeout(run, wait === WAIT ? 0 : wait, ...given);
    Object.assign(window, { setTimeout: hurried });
    callback(...elements);
    setTimeout(() => Object.assign(window, { setTimeout }));
  });
};

/**
 * Begins to work the open workbook out while it is being drawn, not after. Univer lets a moment pass before it begins,
 * and begins anew with what comes meanwhile: the tables.
 */
export function calculateWhileDrawing(injector: Injector): void {
  injector.get(FormulaCalculationSessionController);
  injector.get(TriggerCalculationController);
}
