/** The embedded spreadsheet itself: Univer with the Pourwright functions, in an element of the page. */

import {
  generateRandomId,
  IUndoRedoService,
  type IWorkbookData,
  LifecycleService,
  LifecycleStages,
  LocaleType,
  mergeLocales,
  Univer,
  UniverInstanceType,
} from "@univerjs/core";
import { FUniver } from "@univerjs/core/facade";
import { CalculationMode, SheetsSelectionsService, UniverSheetsCorePreset } from "@univerjs/preset-sheets-core";
import coreTexts from "@univerjs/preset-sheets-core/locales/en-US";
import { UniverSheetsTablePlugin, UniverSheetsTableUIPlugin } from "@univerjs/preset-sheets-table";
import tableTexts from "@univerjs/preset-sheets-table/locales/en-US";
import type { Sheet } from "../../sheet/sheet";
import { STYLES } from "../../sheet/styles";
import { UniverHost } from "./adapter";
import { type Bundle, loadBundle } from "./bundle";
import { ChartLayer } from "./charts";
import { descriptions, executors } from "./functions";
import { forgetOldMessages, type Problem, problemsOf } from "./problems";
import { readTypedFormulas } from "./typing";
import { lookStyle, workbookData } from "./workbook";

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
  /** Opens a workbook in place of the one that is open: a new one the first time, later as it was left. */
  open(workbook: Openable): void;
  setDark(dark: boolean): void;
  /** Whether anything was changed since the start: leaving the page loses it. */
  isChanged(): boolean;
  selectedCell(): CellPlace | null;
  problems(): Problem[];
  /** Calls back when another cell has been selected. */
  onSelect(callback: () => void): void;
}

/** A workbook that can be opened. */
export interface Openable {
  readonly title: string;
  readonly sheets: () => readonly Sheet[];
}

/** Starts it in this element with a first workbook. */
export function startSpreadsheet(container: HTMLElement, bundle: Bundle, first: Openable, dark: boolean): Spreadsheet {
  const functions = loadBundle(bundle);
  const univer = new Univer({
    locale: LocaleType.EN_US,
    locales: { [LocaleType.EN_US]: mergeLocales(coreTexts, tableTexts) },
    darkMode: dark,
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
  readTypedFormulas(injector);

  let isChanged = false;
  injector.get(IUndoRedoService).undoRedoStatus$.subscribe(({ undos }) => {
    isChanged ||= undos > 0;
  });

  const charts = new ChartLayer(container, injector, dark);
  const left = new Map<string, IWorkbookData>();
  let opened = "";
  const open = ({ title, sheets }: Openable) => {
    opened = title;
    const id = generateRandomId();
    const data = left.get(title);
    univer.createUnit(UniverInstanceType.UNIVER_SHEET, data ? { ...data, id } : workbookData(id, sheets()));
    charts.show(title, sheets);
  };
  // Univer's own parts for sheets are there only once a workbook is.
  open(first);
  const api = FUniver.newAPI(univer);

  const host = new UniverHost(univer);
  return {
    univer,
    host,
    ready: injector.get(LifecycleService).onStage(LifecycleStages.Rendered),
    open(workbook) {
      const before = api.getActiveWorkbook();
      if (before) {
        left.set(opened, before.save());
        api.disposeUnit(before.getId());
      }
      open(workbook);
    },
    setDark(on) {
      api.toggleDarkMode(on);
      charts.setDark(on);
    },
    isChanged: () => isChanged || host.isKept(),
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
