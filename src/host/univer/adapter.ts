import {
  CommandType,
  type ICellData,
  ICommandService,
  type Injector,
  IUniverInstanceService,
  type Univer,
  UniverInstanceType,
  type Worksheet,
} from "@univerjs/core";
import { FUniver } from "@univerjs/core/facade";
import { ScrollToRangeOperation, SetWorksheetActiveOperation } from "@univerjs/preset-sheets-core";
import { headingText, reader, spilledCells } from "../../engine/cells";
import { cellContent } from "../../engine/content";
import type { Addition } from "../../sheet/addition";
import type { Cell, Sheet } from "../../sheet/sheet";
import {
  type CellValue,
  DamagedSettings,
  type Host,
  type Place,
  type Source,
  type SourceRows,
  type Work,
} from "../host";
import { refuseMissing, rowsBelow } from "../rowsBelow";
import { DAMAGED, SETTINGS } from "../settingsKeys";
import { addChoices, append, newSheet } from "./append";
import { Calculation } from "./calculation";
import { knowFilteredRows } from "./filteredRows";
import { followHidden } from "./followHidden";
import { hiddenWords } from "./hiddenPlace";
import { asOneStep } from "./oneStep";
import { placedTables } from "./placedTables";
import { printFrame } from "./printFrame";
import { printPage } from "./printPage";
import { printedSheet } from "./printRead";
import { refuseReadOnly } from "./readOnly";
import { SetSettingsMutation } from "./settingsMutation";
import { command, putCells, takeInRows } from "./takeInRows";

/** Changes come in bursts: an edit, then the values calculated from it. */
const QUIET = 150;

/** Changes of how a sheet looks, which leave its tables as they are: of what is hidden only rows count. */
const LOOKS = /height|width|style|color|gridlines|frozen|theme|protection|permission|merge|(?<!row-)(hidden|visible)/;

/**
 * With so many the page stands still for a fifth of a second at most when a sheet is written and when a number in it is
 * changed. With twice as many it is twice that, at each edit, and the page takes three quarters of a gigabyte.
 */
const MOST_FORMULAS = 10_000;

/** The embedded spreadsheet. It always works on the workbook that is open at the moment. */
export class UniverHost implements Host {
  readonly mostFormulas = MOST_FORMULAS;
  readonly #api: FUniver;
  readonly #injector: Injector;
  readonly #calculation: Calculation;

  /** Whether what was said last is that a place cannot be seen. */
  #saidHidden = false;

  /** @param say tells the user something; an empty text takes it back */
  constructor(
    univer: Univer,
    private readonly say: (words: string) => void = () => {},
  ) {
    this.#api = FUniver.newAPI(univer);
    this.#injector = univer.__getInjector();
    this.#calculation = new Calculation(this.#injector);
    this.#injector.get(ICommandService).registerCommand(SetSettingsMutation);
    knowFilteredRows(this.#injector);
    followHidden(this.#injector);
  }

  /** Notes that the cells of the open workbook hold already what its formulas give. */
  valuesAreKnown(): void {
    this.#calculation.known();
  }

  /** Resolves once all formulas are calculated. */
  settled(): Promise<void> {
    return this.#calculation.settled();
  }

  async tables(): Promise<Source[]> {
    await this.#calculation.settled();
    return this.#tables();
  }

  #tables(): Source[] {
    const order = this.#workbook()
      .getSheets()
      .map((sheet) => sheet.getName());
    return placedTables(this.#injector, this.#workbook())
      .sort((a, b) => order.indexOf(a.sheet) - order.indexOf(b.sheet) || a.row - b.row || a.column - b.column)
      .map(({ name, sheet, row, column, rows, headings }) => ({
        name,
        place: { sheet, row, column, rows: rows + 1, columns: headings.length },
        headings,
      }));
  }

  /** The tables with their rows of totals, below which something else may stand. */
  #blocks(): { name: string; place: Place }[] {
    return placedTables(this.#injector, this.#workbook()).map(
      ({ name, sheet, row, column, rows, headings, hasTotals }) => ({
        name,
        place: { sheet, row, column, rows: rows + (hasTotals ? 2 : 1), columns: headings.length },
      }),
    );
  }

  async read(source: Source): Promise<SourceRows> {
    if (!source.name) return this.#rows(source);
    return this.#rows(await this.#table(source.name));
  }

  async selection(): Promise<SourceRows> {
    const selected = this.#book().getActiveSheet().getSelection()?.getActiveRange()?.getRange();
    if (!selected || (selected.startRow === selected.endRow && selected.startColumn === selected.endColumn)) {
      throw new Error("Select the whole table first, from its headings to its last row.");
    }
    await this.#calculation.settled();
    const sheet = this.#workbook().getActiveSheet();
    // Whole columns reach to the end of the sheet; the rows that hold something are meant.
    const last = sheet.getDataRealRange();
    const place = placeOf(sheet, {
      startRow: selected.startRow || 0,
      startColumn: selected.startColumn || 0,
      endRow: Math.min(lastOf(selected.endRow), Math.max(last.endRow, selected.startRow || 0)),
      endColumn: Math.min(lastOf(selected.endColumn), Math.max(last.endColumn, selected.startColumn || 0)),
    });
    return this.#rows({ name: "", place, headings: this.#headings(sheet, place) });
  }

  async sheetNames(): Promise<string[]> {
    return this.#workbook()
      .getSheets()
      .map((sheet) => sheet.getName());
  }

  async firstCells(): Promise<{ sheet: string; value: CellValue }[]> {
    await this.#calculation.settled();
    return this.#workbook()
      .getSheets()
      .map((sheet) => ({ sheet: sheet.getName(), value: reader(this.#injector, sheet)(0, 0) }));
  }

  async addSheet(sheet: Sheet, { signal, onProgress }: Work = {}): Promise<string> {
    const book = this.#book();
    refuseReadOnly(this.#injector, book.getId());
    newSheet(this.#injector, this.#workbook(), sheet);
    const before = book.getActiveSheet();
    // A press on the stop button is heard only between two turns of the page.
    const turn = async (share: number) => {
      onProgress?.(share);
      await new Promise((next) => setTimeout(next));
      signal?.throwIfAborted();
    };
    await turn(0.1);
    const { name, id, changes } = newSheet(this.#injector, this.#workbook(), sheet);
    try {
      asOneStep(this.#injector, book.getId(), (change) => changes.forEach(change));
      addChoices(this.#injector, this.#workbook(), sheet, id);
      await turn(0.5);
      this.#api.getFormula().executeCalculation();
      await turn(1);
      return name;
    } catch (fault) {
      if (this.#workbook().getSheetBySheetId(id)) book.deleteSheet(id);
      book.setActiveSheet(before);
      throw fault;
    }
  }

  async readSheet(name: string): Promise<CellValue[][]> {
    await this.#calculation.settled();
    const sheet = this.#sheet(name);
    const read = reader(this.#injector, sheet);
    const { endRow, endColumn } = sheet.getDataRealRange();
    const spilled = spilledCells(this.#injector, sheet);
    const lastRow = Math.max(endRow, ...Object.keys(spilled).map(Number));
    const lastColumn = Math.max(endColumn, ...Object.values(spilled).flatMap((row) => Object.keys(row).map(Number)));
    return Array.from({ length: lastRow + 1 }, (_, row) =>
      Array.from({ length: lastColumn + 1 }, (_, column) => read(row, column)),
    );
  }

  async isFormula(name: string, row: number, column: number): Promise<boolean> {
    const cell = this.#sheet(name).getCell(row, column);
    return Boolean(cell?.f || cell?.si);
  }

  async write(name: string, cells: readonly Cell[]): Promise<void> {
    const sheet = this.#sheet(name);
    const tables = placedTables(this.#injector, this.#workbook());
    const value: Record<number, Record<number, ICellData>> = {};
    for (const { row, column, content } of cells) {
      if (!content) continue;
      value[row] ??= {};
      const old = { f: null, si: null, v: null, p: null, t: null };
      (value[row] as Record<number, ICellData>)[column] = {
        ...old,
        ...cellContent(content, { sheet: name, row, column }, tables),
      };
    }
    await putCells(this.#injector, sheet, value);
    await this.#calculation.settled();
  }

  async append(additions: readonly Addition[]): Promise<void> {
    const filled = additions.filter((one) => !("table" in one) || one.rows.length > 0);
    if (filled.length === 0) return;
    await this.#calculation.settled();
    const book = this.#book();
    refuseReadOnly(this.#injector, book.getId());
    const shown = book.getActiveSheet();
    try {
      append(this.#injector, this.#workbook(), filled);
      if (filled.some((one) => !("table" in one))) this.#api.getFormula().executeCalculation();
    } finally {
      if (book.getActiveSheet().getSheetId() !== shown.getSheetId()) book.setActiveSheet(shown);
    }
  }

  async takeInRows(name: string, rows: number): Promise<void> {
    if (rows === 0) return;
    const table = await this.#table(name);
    this.#refuseTotals(name);
    refuseMissing(name, rows, (await this.#rows(table)).below ?? 0);
    await takeInRows(this.#injector, this.#sheet(table.place.sheet), table, rows);
  }

  async activeSheet(): Promise<string> {
    return this.#book().getActiveSheet().getSheetName();
  }

  async select(place: Place): Promise<void> {
    const { sheet: name, row, column, rows, columns } = place;
    const sheet = this.#book().getSheetByName(name);
    if (!sheet) throw new Error(`The sheet "${name}" is not there any more.`);
    this.#book().setActiveSheet(sheet);
    sheet.getRange(row, column, rows, columns).activate();
    const range = { startRow: row, endRow: row + rows - 1, startColumn: column, endColumn: column + columns - 1 };
    await this.#injector.get(ICommandService).executeCommand(ScrollToRangeOperation.id, { range });
    const words = hiddenWords(sheet.getSheet(), place);
    if (words || this.#saidHidden) this.say(words);
    this.#saidHidden = words !== "";
  }

  async settings(): Promise<unknown> {
    const { [SETTINGS]: text, ...others } = this.#book().getCustomMetadata() ?? {};
    if (text === undefined) return null;
    try {
      return JSON.parse(text);
    } catch {
      this.#book().setCustomMetadata({ ...others, [DAMAGED]: text });
      throw new DamagedSettings();
    }
  }

  async keepSettings(settings: unknown): Promise<void> {
    // As text: what names of headings are among its keys means nothing to Univer.
    await command(this.#injector, SetSettingsMutation.id, {
      unitId: this.#book().getId(),
      custom: { ...this.#book().getCustomMetadata(), [SETTINGS]: JSON.stringify(settings) },
    });
  }

  async print(name: string): Promise<void> {
    await printFrame(await this.printable(name), name);
  }

  /** The page of HTML that print() prints. */
  async printable(name: string): Promise<string> {
    await this.#calculation.settled();
    return printPage(printedSheet(this.#injector, this.#sheet(name), navigator.language));
  }

  onChange(callback: () => void): () => void {
    let timer: ReturnType<typeof setTimeout> | undefined;
    const soon = () => {
      clearTimeout(timer);
      timer = setTimeout(callback, QUIET);
    };
    const changed = this.#injector.get(ICommandService).onCommandExecuted(({ id, type }) => {
      if (id === SetWorksheetActiveOperation.id) soon();
      else if (type === CommandType.MUTATION && id.startsWith("sheet.mutation.") && !LOOKS.test(id)) soon();
    });
    const opened = this.#injector
      .get(IUniverInstanceService)
      .getTypeOfUnitAdded$(UniverInstanceType.UNIVER_SHEET)
      .subscribe(soon);
    return () => {
      clearTimeout(timer);
      changed.dispose();
      opened.unsubscribe();
    };
  }

  #book() {
    const book = this.#api.getActiveWorkbook();
    if (!book) throw new Error("No workbook is open.");
    return book;
  }

  #workbook() {
    return this.#book().getWorkbook();
  }

  #sheet(name: string): Worksheet {
    const sheet = this.#workbook().getSheetBySheetName(name);
    if (!sheet) throw new Error(`The sheet "${name}" is not there any more.`);
    return sheet;
  }

  #refuseTotals(name: string): void {
    const table = placedTables(this.#injector, this.#workbook()).find((one) => one.name === name);
    if (table?.hasTotals)
      throw new Error(
        `The table ${name} has a row of totals right below it. Insert rows above that one and write them there.`,
      );
  }

  /** A table as it is now. */
  async #table(name: string): Promise<Source> {
    const table = (await this.tables()).find((one) => one.name === name);
    if (!table) throw new Error(`The table "${name}" is not there any more. Choose another one.`);
    return table;
  }

  #headings(sheet: Worksheet, { row, column, columns }: Place): string[] {
    const read = reader(this.#injector, sheet);
    return Array.from({ length: columns }, (_, i) => headingText(read(row, column + i)));
  }

  async #rows(source: Source): Promise<SourceRows> {
    await this.#calculation.settled();
    const { row, column, rows, columns } = source.place;
    const sheet = this.#sheet(source.place.sheet);
    const read = reader(this.#injector, sheet);
    const rowAt = (r: number) => Array.from({ length: columns }, (_, c) => read(r, column + c));
    const indexes = Array.from({ length: rows - 1 }, (_, r) => r);
    const blocks = this.#blocks();
    const block = source.name ? blocks.find(({ name }) => name === source.name) : undefined;
    return {
      ...source,
      rows: indexes.map((r) => rowAt(row + 1 + r)),
      below: rowsBelow(
        block?.place ?? source.place,
        blocks.map(({ place }) => place),
        rowAt,
      ),
      hidden: indexes.filter((r) => !sheet.getRowVisible(row + 1 + r)),
    };
  }
}

interface Box {
  readonly startRow: number;
  readonly endRow: number;
  readonly startColumn: number;
  readonly endColumn: number;
}

function placeOf(sheet: Worksheet, { startRow, endRow, startColumn, endColumn }: Box): Place {
  return {
    sheet: sheet.getName(),
    row: startRow,
    column: startColumn,
    rows: endRow - startRow + 1,
    columns: endColumn - startColumn + 1,
  };
}

/** Whole rows and columns end with NaN. */
const lastOf = (end: number) => (Number.isNaN(end) ? Number.POSITIVE_INFINITY : end);
