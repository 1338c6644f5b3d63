import {
  ICommandService,
  IUniverInstanceService,
  LocaleType,
  Univer,
  UniverInstanceType,
  type Workbook,
} from "@univerjs/core";
import { UniverFormulaEnginePlugin } from "@univerjs/engine-formula";
import { SetRangeValuesCommand, UniverSheetsFormulaPlugin, UniverSheetsPlugin } from "@univerjs/preset-sheets-core";
import { UniverSheetsTablePlugin } from "@univerjs/preset-sheets-table";
import { STEPS, WHOLE_SHEETS } from "../../../src/host/univer/editing/edits";
import { placedTables } from "../../../src/host/univer/placedTables";
import { workbookData } from "../../../src/host/univer/workbook";
import type { Sheet } from "../../../src/sheet/sheet";

let count = 0;

/** The embedded spreadsheet without its page: commands are run as the page's keys and menus run them. */
export class Headless {
  readonly univer = new Univer({ override: STEPS, locale: LocaleType.EN_US, locales: { [LocaleType.EN_US]: {} } });
  readonly injector = this.univer.__getInjector();
  readonly workbook: Workbook;

  constructor(sheets: readonly Sheet[], plugins: readonly Parameters<Univer["registerPlugin"]>[0][] = []) {
    this.univer.registerPlugin(UniverFormulaEnginePlugin);
    this.univer.registerPlugin(UniverSheetsPlugin, WHOLE_SHEETS);
    this.univer.registerPlugin(UniverSheetsFormulaPlugin);
    this.univer.registerPlugin(UniverSheetsTablePlugin);
    for (const plugin of plugins) this.univer.registerPlugin(plugin);
    this.workbook = this.univer.createUnit(UniverInstanceType.UNIVER_SHEET, workbookData(`headless${++count}`, sheets));
    this.injector.get(IUniverInstanceService).focusUnit(this.workbook.getUnitId());
  }

  get sheet() {
    return this.workbook.getActiveSheet();
  }

  get ids() {
    return { unitId: this.workbook.getUnitId(), subUnitId: this.sheet.getSheetId() };
  }

  run(id: string, params: object): Promise<boolean> {
    return this.injector.get(ICommandService).executeCommand(id, { ...this.ids, ...params });
  }

  /** Puts contents into cells from one on, as an edit or a paste does: a text with `=` is a formula. */
  enter(row: number, column: number, rows: readonly (readonly (string | number | null)[])[], id?: string) {
    const value = Object.fromEntries(
      rows.map((cells, r) => [
        row + r,
        Object.fromEntries(
          cells.map((cell, c) => [
            column + c,
            typeof cell === "string" && cell.startsWith("=") ? { f: cell } : { v: cell },
          ]),
        ),
      ]),
    );
    // Without a range it asks for the selection, which there is none of without a page.
    const range = { startRow: row, endRow: row, startColumn: column, endColumn: column };
    return this.run(SetRangeValuesCommand.id, { value, range, ...(id && { redoUndoId: id }) });
  }

  /** What a cell holds: its formula, or else its value. */
  cell(row: number, column: number): unknown {
    const cell = this.sheet.getCellMatrix().getValue(row, column);
    return cell?.f ?? cell?.v ?? null;
  }

  cells(row: number, column: number, rows: number, columns: number): unknown[][] {
    return Array.from({ length: rows }, (_, r) =>
      Array.from({ length: columns }, (_, c) => this.cell(row + r, column + c)),
    );
  }

  /** The rows below a table's heading and its headings, as the page reads them. */
  table(name: string): { rows: number; headings: readonly string[]; known?: readonly string[] } | undefined {
    const found = placedTables(this.injector, this.workbook).find((one) => one.name === name);
    return found && { rows: found.rows, headings: found.headings, known: found.known };
  }
}
