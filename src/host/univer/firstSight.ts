/** What lets the first workbook be seen computed sooner than Univer, version 0.25.1, would show it. */

import { ICommandService, type Injector } from "@univerjs/core";
import { SetFormulaCalculationStartMutation } from "@univerjs/engine-formula";
import {
  DesktopRibbonService,
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

/** Univer builds its toolbar anew for each menu that a part of it brings, and shows it each time. */
interface Toolbar {
  _updateRibbon(): void;
}

const toolbar = DesktopRibbonService.prototype as unknown as Toolbar;
const { _updateRibbon } = toolbar;
const held = new Set<Toolbar>();
toolbar._updateRibbon = function () {
  held.add(this);
};

/** Builds the toolbar; until now its room has been blank. */
export function showToolbar(): void {
  toolbar._updateRibbon = _updateRibbon;
  for (const one of held) one._updateRibbon();
  held.clear();
}

/** Resolves once what is drawn by now can be seen; on a page that is out of sight, soon. */
export function painted(): Promise<void> {
  if (document.hidden) return Promise.resolve();
  return new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve)));
}

interface Trigger {
  _setTimeoutKey: ReturnType<typeof setTimeout>;
  _waitingCommandQueue: unknown[];
}

/** Works out all of the workbook that was just opened, without the moment that Univer would let pass before it. */
export function calculateNow(injector: Injector): void {
  const trigger = injector.get(TriggerCalculationController) as unknown as Trigger;
  // The moment has passed: it is being worked out already.
  if (trigger._waitingCommandQueue.length === 0) return;
  clearTimeout(trigger._setTimeoutKey);
  trigger._waitingCommandQueue = [];
  const all = {
    forceCalculation: true,
    dirtyRanges: [],
    dirtyNameMap: {},
    dirtyDefinedNameMap: {},
    dirtySuperTableMap: {},
    dirtyUnitFeatureMap: {},
    dirtyUnitOtherFormulaMap: {},
    clearDependencyTreeCache: {},
  };
  void injector.get(ICommandService).executeCommand(SetFormulaCalculationStartMutation.id, all, { onlyLocal: true });
}
