/** The embedded spreadsheet itself: Univer with the Pourwright functions, in an element of the page. */

import {
  generateRandomId,
  ICommandService,
  type IWorkbookData,
  LifecycleService,
  LifecycleStages,
  LocaleType,
  mergeLocales,
  Univer,
  UniverInstanceType,
  type Workbook,
} from "@univerjs/core";
import { FUniver } from "@univerjs/core/facade";
import {
  CalculationMode,
  ILayoutService,
  SetWorksheetActiveOperation,
  SheetsSelectionsService,
  UniverSheetsCorePreset,
} from "@univerjs/preset-sheets-core";
import coreTexts from "@univerjs/preset-sheets-core/locales/en-US";
import { UniverSheetsTablePlugin, UniverSheetsTableUIPlugin } from "@univerjs/preset-sheets-table";
import tableTexts from "@univerjs/preset-sheets-table/locales/en-US";
import { type Bundle, loadBundle } from "../../engine/bundle";
import { descriptions, executors } from "../../engine/functions";
import { forgetOldMessages, type Problem, problemsOf } from "../../engine/problems";
import { parseAnewWithTables } from "../../engine/tableChanges";
import { readTypedFormulas } from "../../engine/typing";
import { STYLES } from "../../sheet/styles";
import { UniverHost } from "./adapter";
import { type Change, onDataChange } from "./changes";
import { ChartLayer } from "./charts";
import { readDottedDates } from "./dottedDates";
import { STEPS } from "./editing/edits";
import { prepareEditing } from "./editing/prepareEditing";
import { ASIDE } from "./file/cellData";
import type { WorkedOut } from "./file/fromUniver";
import { workedOut } from "./file/workedOut";
import { calculateWhileDrawing } from "./firstSight";
import { placedTables } from "./placedTables";
import { ReadOnly } from "./readOnly";
import { refusalTexts } from "./refusalTexts";
import { snapshotAsShown } from "./snapshot";
import { TypedFunction } from "./typedFunction";
import { lookStyle } from "./workbook";

/** How tables look; Univer's own looks would colour their cells over. */
const TABLE_LOOK = {
  name: "pourwright",
  style: {
    // The filter's buttons take the text's colour.
    headerRowStyle: lookStyle({ ...STYLES.heading, color: "3A342B" }),
    lastRowStyle: lookStyle({ border: "bottom" }),
  },
};

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

/** Starts it in this element with a first workbook. */
export function startSpreadsheet(
  container: HTMLElement,
  bundle: Bundle,
  first: IWorkbookData,
  dark: boolean,
): Spreadsheet {
  const functions = loadBundle(bundle);
  const univer = new Univer({
    locale: LocaleType.EN_US,
    locales: { [LocaleType.EN_US]: refusalTexts(mergeLocales(coreTexts, tableTexts)) },
    darkMode: dark,
    override: STEPS,
  });
  // On a narrow page the sheets' tabs need the room that zoom and statistics would take.
  const wide = container.clientWidth >= 600;
  const { plugins } = UniverSheetsCorePreset({
    container,
    ribbonType: "simple",
    footer: { menus: wide, zoomSlider: wide, statisticBar: wide },
    formula: {
      function: executors(functions),
      description: descriptions(functions),
      // What formulas spilled is not kept in a workbook that was left.
      initialFormulaComputing: CalculationMode.FORCED,
    },
  });
  for (const plugin of plugins) {
    if (Array.isArray(plugin)) univer.registerPlugin(plugin[0], plugin[1]);
    else univer.registerPlugin(plugin);
  }
  univer.registerPlugin(UniverSheetsTablePlugin, { userThemes: [TABLE_LOOK] });
  // Its label would cover the row above a table.
  univer.registerPlugin(UniverSheetsTableUIPlugin, { hideAnchor: true });
  const injector = univer.__getInjector();
  forgetOldMessages(injector);
  readTypedFormulas(injector, (workbook) => placedTables(injector, workbook));
  parseAnewWithTables(injector);

  const charts = new ChartLayer(container, injector, dark);
  const readOnly = new ReadOnly(injector);
  // The id must be one that was never used before: the formula engine keeps what it parsed by it.
  const open = (workbook: IWorkbookData) => {
    const data = { ...workbook, id: generateRandomId() };
    const unit = univer.createUnit<IWorkbookData, Workbook>(UniverInstanceType.UNIVER_SHEET, data);
    const shown = unit.getSheetBySheetId(workbook.custom?.[ASIDE]?.active ?? "");
    if (!shown || shown.isSheetHidden()) return;
    // What draws the sheet follows the operation only.
    const ids = { unitId: unit.getUnitId(), subUnitId: shown.getSheetId() };
    injector.get(ICommandService).syncExecuteCommand(SetWorksheetActiveOperation.id, ids);
  };
  // Univer's own parts for sheets are there only once a workbook is.
  open(first);
  calculateWhileDrawing(injector);
  const api = FUniver.newAPI(univer);

  const current = () => {
    const workbook = api.getActiveWorkbook()?.getWorkbook();
    if (!workbook) throw new Error("No workbook is open.");
    return workbook;
  };

  const host = new UniverHost(univer);
  const typedFunction = new TypedFunction(
    injector,
    functions.map(({ id }) => id),
  );
  const listeners: ((words: string) => void)[] = [];
  const say = (words: string) => {
    for (const listener of listeners) listener(words);
  };
  readDottedDates(injector);
  prepareEditing(injector, (place) => host.select(place), say);
  const ready = injector.get(LifecycleService).onStage(LifecycleStages.Rendered);
  const work = ready
    .then(async () => {
      const [{ register }, { showConditions }] = await Promise.all([
        import(/* webpackChunkName: "editing" */ "./editing/openPlugins"),
        import(/* webpackChunkName: "editing" */ "./lateConditions"),
      ]);
      await register(univer);
      showConditions(injector);
    })
    .catch(() => say("Sorting, filters and finding could not be loaded. Load the page again to have them."));
  return {
    univer,
    host,
    ready,
    work,
    onSay: (callback) => void listeners.push(callback),
    open(workbook) {
      const before = api.getActiveWorkbook();
      readOnly.set(false);
      if (before) api.disposeUnit(before.getId());
      open(workbook);
    },
    snapshot: () => snapshotAsShown(injector, current()),
    workedOut: () => workedOut(injector, current()),
    onDataChange: (callback) =>
      onDataChange(injector, (unitId, change) => {
        if (unitId === current().getUnitId()) callback(change);
      }),
    setReadOnly: (on) => readOnly.set(on),
    onRefusedChange: (callback) => readOnly.onRefused(callback),
    focus: () => injector.get(ILayoutService).focus(),
    async finishTyping() {
      await api.getActiveWorkbook()?.endEditingAsync(true);
    },
    typedFunction: () => typedFunction.typed(),
    selectedFunction() {
      const sheet = api.getActiveWorkbook()?.getActiveSheet();
      return typedFunction.in(sheet?.getSelection()?.getActiveRange()?.getFormula() ?? "");
    },
    onTyping: (callback) => typedFunction.onMove(callback),
    setDark(on) {
      api.toggleDarkMode(on);
      charts.setDark(on);
    },
    selectedCell() {
      const sheet = api.getActiveWorkbook()?.getActiveSheet();
      const cell = sheet?.getSelection()?.getCurrentCell();
      return sheet && cell ? { sheet: sheet.getSheetName(), row: cell.actualRow, column: cell.actualColumn } : null;
    },
    problems() {
      const workbook = api.getActiveWorkbook()?.getWorkbook();
      return workbook ? problemsOf(injector, workbook) : [];
    },
    onSelect(callback) {
      // The events come before the selection has changed. The facade's own for selections would begin only seconds
      // after the opening.
      const after = () => setTimeout(callback);
      injector.get(SheetsSelectionsService).selectionChanged$.subscribe(after);
      api.addEvent(api.Event.ActiveSheetChanged, after);
    },
  };
}
