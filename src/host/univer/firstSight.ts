/** What lets the first workbook be seen computed sooner than Univer, version 0.25.1, would show it. */

import { ICommandService, type Injector } from "@univerjs/core";
import { SetFormulaCalculationStartMutation } from "@univerjs/engine-formula";
import {
  DesktopRibbonService,
  DesktopUIController,
  FormulaCalculationSessionController,
  type IRenderManagerService,
  TriggerCalculationController,
} from "@univerjs/preset-sheets-core";

/** Univer waits so long, in milliseconds, before it puts the first workbook into the page. */
const WAIT = 300;

/** What is private in Univer's controller of the page. */
interface Page {
  readonly _renderManagerService: IRenderManagerService;
  /** Puts what draws a workbook into the page; says whether it did. */
  _changeRenderUnit(unitId: string, content: HTMLElement): boolean;
}

// The wait begins with the callback of the page's being there. All that waits so long then need not: the sheet is put
// into the page at once, and what answers to the pointer and the keyboard follows when it has been drawn.
const { bootstrap } = DesktopUIController.prototype;
DesktopUIController.prototype.bootstrap = function (callback) {
  const page = this as unknown as Page;
  return bootstrap.call(this, (content, container) => {
    const { setTimeout } = window;
    const hurried = (run: TimerHandler, wait?: number, ...given: unknown[]) => {
      if (wait !== WAIT || typeof run !== "function") return setTimeout(run, wait, ...given);
      [...page._renderManagerService.getRenderAll().keys()].find((id) => page._changeRenderUnit(id, content));
      void painted().then(() => run());
      return 0;
    };
    Object.assign(window, { setTimeout: hurried });
    callback(content, container);
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
