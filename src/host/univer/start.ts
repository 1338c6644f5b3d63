/** The embedded spreadsheet itself: Univer with the Pourwright functions, in an element of the page. */

import {
  type Injector,
  type IWorkbookData,
  LifecycleService,
  LifecycleStages,
  type Univer,
  type Workbook,
} from "@univerjs/core";
import { FUniver } from "@univerjs/core/facade";
import { ILayoutService, SheetsSelectionsService } from "@univerjs/preset-sheets-core";
import { type Bundle, loadBundle } from "../../engine/bundle";
import { watchForCycles } from "../../engine/cycles";
import { dropLateResults } from "../../engine/lateResults";
import { lookAtMoved } from "../../engine/moved";
import { parseAnew } from "../../engine/parseAnew";
import { forgetOldMessages, type Problem, problemsOf } from "../../engine/problems";
import { forgetRemoved } from "../../engine/removed";
import { knowTotals } from "../../engine/tableParts";
import { readTypedFormulas } from "../../engine/typing";
import type { KnownValues } from "../../sheet/knownValues";
import { UniverHost } from "./adapter";
import { backToCells } from "./backToCells";
import { type Change, onDataChange } from "./changes";
import { ChartLayer } from "./charts";
import { readDottedDates } from "./dottedDates";
import { prepareEditing } from "./editing/prepareEditing";
import type { WorkedOut } from "./file/fromUniver";
import { workedOut } from "./file/workedOut";
import { calculateNow, calculateWhileDrawing, painted, showToolbar } from "./firstSight";
import { bringFunctionTexts } from "./functionTexts";
import { fillCells, withValues } from "./knownCells";
import { makeUniver } from "./makeUniver";
import { openWorkbook } from "./openWorkbook";
import { placedTables, totalsOf } from "./placedTables";
import { ReadOnly } from "./readOnly";
import { snapshotAsShown } from "./snapshot";
import { lookThroughInTurns } from "./turns";
import { TypedFunction } from "./typedFunction";

/** A cell by its sheet's name, row and column from 0. */
export interface CellPlace {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
}

export interface Spreadsheet {
  readonly univer: Univer;
  readonly host: UniverHost;
  /** Resolves once the sheet is drawn and takes what is typed and clicked. */
  readonly ready: Promise<void>;
  /** Resolves once sorting, filters and the like are there too: they load when the sheet is drawn. */
  readonly work: Promise<void>;
  /** Calls back with what is to be told about what was just done; with an empty text when it holds no more. */
  onSay(callback: (words: string) => void): void;
  /** Opens a workbook in place of the one that is open. Its id does not matter: it gets one of its own. */
  open(workbook: IWorkbookData): void;
  /** The data of the open workbook, to be read only. */
  snapshot(): Readonly<IWorkbookData>;
  /** What its formulas fill beside what is in the data, to be read only. */
  workedOut(): WorkedOut;
  /** Calls back after each change of the open workbook's data. */
  onDataChange(callback: (change: Change) => void): () => void;
  /** Lets the open workbook only be looked at, or worked on again; one that is opened later may be worked on. */
  setReadOnly(on: boolean): void;
  /** Calls back when a change was refused because the workbook is only to be looked at. */
  onRefusedChange(callback: () => void): () => void;
  setDark(dark: boolean): void;
  /** Gives the keyboard to the cells. */
  focus(): void;
  /** Takes what is being typed into its cell. */
  finishTyping(): Promise<void>;
  /** The id of our function at the caret of the formula being typed; null where there is none. */
  typedFunction(): string | null;
  /** The id of the first of our functions in the selected cell's formula. */
  selectedFunction(): string | null;
  /** Calls back when the caret has moved in a text being typed, or typing has ended. */
  onTyping(callback: () => void): void;
  selectedCell(): CellPlace | null;
  problems(): Problem[];
  /** Calls back when another cell has been selected. */
  onSelect(callback: () => void): void;
}

/** A first workbook. */
export interface First {
  readonly data: IWorkbookData;
  /** What its formulas give, where that is known: it is computed as soon as it is drawn. */
  readonly known?: KnownValues;
}

/** What is loaded later waits for the first calculation, but no longer than this, in milliseconds. */
const LATER = 500;

/** Starts it in this element with a first workbook. */
export function startSpreadsheet(container: HTMLElement, bundle: Bundle, first: First, dark: boolean): Spreadsheet {
  const functions = loadBundle(bundle);
  const univer = makeUniver(container, functions, dark);
  const typed = functions.map(({ id }) => id);
  return new Embedded(univer, container, first, typed, dark);
}

class Embedded implements Spreadsheet {
  readonly host: UniverHost;
  readonly ready: Promise<void>;
  readonly work: Promise<void>;
  readonly #api: FUniver;
  readonly #injector: Injector;
  readonly #charts: ChartLayer;
  readonly #readOnly: ReadOnly;
  readonly #typedFunction: TypedFunction;
  readonly #listeners: ((words: string) => void)[] = [];

  constructor(
    readonly univer: Univer,
    container: HTMLElement,
    { data, known }: First,
    ids: readonly string[],
    dark: boolean,
  ) {
    const injector = univer.__getInjector();
    this.#injector = injector;
    forgetOldMessages(injector);
    watchForCycles(injector);
    readTypedFormulas(injector, (workbook) => placedTables(injector, workbook));
    parseAnew(injector);
    dropLateResults(injector);
    this.#charts = new ChartLayer(container, injector, dark);
    this.#readOnly = new ReadOnly(injector);
    // Univer's own parts for sheets are there only once a workbook is.
    const workbook = openWorkbook(univer, known ? withValues(data, known) : data);
    if (known) fillCells(injector, workbook, known);
    else calculateWhileDrawing(injector);
    knowTotals(injector, totalsOf(injector));
    forgetRemoved(injector);
    lookAtMoved(injector);
    lookThroughInTurns(injector);
    this.#api = FUniver.newAPI(univer);
    this.host = new UniverHost(univer, (words) => this.#say(words));
    this.#typedFunction = new TypedFunction(injector, ids);
    readDottedDates(injector);
    prepareEditing(
      injector,
      (place) => this.host.select(place),
      (words) => this.#say(words),
    );
    backToCells(container, () => this.focus());
    this.ready = injector
      .get(LifecycleService)
      .onStage(LifecycleStages.Rendered)
      .then(() => {
        if (known) this.host.valuesAreKnown();
      });
    this.work = this.#finish().catch(() =>
      this.#say("Sorting, filters and finding could not be loaded. Load the page again to have them."),
    );
  }

  /** What the first sight of the workbook need not wait for, the most wanted first. */
  async #finish(): Promise<void> {
    await this.ready;
    await painted();
    calculateNow(this.#injector);
    const later = new Promise((resolve) => setTimeout(resolve, LATER));
    await Promise.race([this.host.settled().catch(() => undefined), later]);
    showToolbar();
    const [{ register }, { showConditions }] = await Promise.all([
      import(/* webpackChunkName: "editing" */ "./editing/openPlugins"),
      import(/* webpackChunkName: "editing" */ "./lateConditions"),
    ]);
    await register(this.univer);
    showConditions(this.#injector);
    await bringFunctionTexts(this.#injector);
  }

  onSay(callback: (words: string) => void): void {
    this.#listeners.push(callback);
  }

  #say(words: string): void {
    for (const listener of this.#listeners) listener(words);
  }

  open(workbook: IWorkbookData): void {
    const before = this.#api.getActiveWorkbook();
    this.#readOnly.set(false);
    if (before) this.#api.disposeUnit(before.getId());
    openWorkbook(this.univer, workbook);
  }

  snapshot(): Readonly<IWorkbookData> {
    return snapshotAsShown(this.#injector, this.#current());
  }

  workedOut(): WorkedOut {
    return workedOut(this.#injector, this.#current());
  }

  #current(): Workbook {
    const workbook = this.#api.getActiveWorkbook()?.getWorkbook();
    if (!workbook) throw new Error("No workbook is open.");
    return workbook;
  }

  onDataChange(callback: (change: Change) => void): () => void {
    return onDataChange(this.#injector, (unitId, change) => {
      if (unitId === this.#current().getUnitId()) callback(change);
    });
  }

  setReadOnly(on: boolean): void {
    this.#readOnly.set(on);
  }

  onRefusedChange(callback: () => void): () => void {
    return this.#readOnly.onRefused(callback);
  }

  setDark(dark: boolean): void {
    this.#api.toggleDarkMode(dark);
    this.#charts.setDark(dark);
  }

  focus(): void {
    this.#injector.get(ILayoutService).focus();
  }

  async finishTyping(): Promise<void> {
    await this.#api.getActiveWorkbook()?.endEditingAsync(true);
  }

  typedFunction(): string | null {
    return this.#typedFunction.typed();
  }

  selectedFunction(): string | null {
    const sheet = this.#api.getActiveWorkbook()?.getActiveSheet();
    return this.#typedFunction.in(sheet?.getSelection()?.getActiveRange()?.getFormula() ?? "");
  }

  onTyping(callback: () => void): void {
    this.#typedFunction.onMove(callback);
  }

  selectedCell(): CellPlace | null {
    const sheet = this.#api.getActiveWorkbook()?.getActiveSheet();
    const cell = sheet?.getSelection()?.getCurrentCell();
    return sheet && cell ? { sheet: sheet.getSheetName(), row: cell.actualRow, column: cell.actualColumn } : null;
  }

  problems(): Problem[] {
    const workbook = this.#api.getActiveWorkbook()?.getWorkbook();
    return workbook ? problemsOf(this.#injector, workbook, placedTables(this.#injector, workbook)) : [];
  }

  onSelect(callback: () => void): void {
    // The events come before the selection has changed. The facade's own for selections would begin only seconds
    // after the opening.
    const after = () => setTimeout(callback);
    this.#injector.get(SheetsSelectionsService).selectionChanged$.subscribe(after);
    this.#api.addEvent(this.#api.Event.ActiveSheetChanged, after);
  }
}
