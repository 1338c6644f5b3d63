import type { Addition } from "../../sheet/addition";
import type { Cell, Sheet } from "../../sheet/sheet";
import type { CellValue, Host, Place, Remarks, Source, SourceRows, Work } from "../host";
import { addSheet } from "./addSheet";
import { append, failedToAdd } from "./append";
import { askAround, placeOf } from "./around";
import { ask } from "./ask";
import { Calculation } from "./calculation";
import { askForDoubts } from "./doubts";
import { FunctionRuns, type Runs } from "./functionRuns";
import { keepSettings, readSettings, settingsText } from "./keptSettings";
import { laidOut } from "./laidOut";
import { listen } from "./listening";
import { RemarkBoard } from "./remarks";
import { cellValues, headed, partsOf, sourceOf } from "./sources";
import { takeInRows } from "./takeInRows";
import { writeCells } from "./writeCells";

/** What is loaded of a range to know its cells exactly. */
const CELLS = "values,valueTypes";

/** Excel as a host. Each method makes the same few calls to Excel, however many rows there are. */
export class ExcelHost implements Host {
  private readonly calculation: Calculation;
  private readonly remarks = new RemarkBoard();

  /**
   * @param waits the waits, in milliseconds, for cells that Excel is still working on
   * @param runs what is known of the functions that run in the page
   */
  constructor(
    waits?: readonly number[],
    private readonly runs: Runs = new FunctionRuns(),
  ) {
    this.calculation = new Calculation(runs, (what) => this.remarks.wait(what), waits);
  }

  tables(): Promise<Source[]> {
    return ask("Excel could not list the tables", async (context) => {
      const tables = context.workbook.tables.load(
        "items/name,items/showHeaders,items/worksheet/name,items/worksheet/position",
      );
      await context.sync();
      // Without its heading row a table cannot be matched by its columns.
      const parts = tables.items.filter(({ showHeaders }) => showHeaders).map(partsOf);
      await context.sync();
      return parts
        .map((part) => ({ source: sourceOf(part), position: part.table.worksheet.position }))
        .sort(
          ({ source: { place: a }, position: p }, { source: { place: b }, position: q }) =>
            p - q || a.row - b.row || a.column - b.column,
        )
        .map(({ source }) => source);
    });
  }

  read(source: Source): Promise<SourceRows> {
    if (!source.name) return this.readPlace(source.place);
    return ask(`Excel could not read the table ${source.name}`, async (context) => {
      const table = context.workbook.tables.getItem(source.name).load("name,worksheet/name");
      const part = partsOf(table);
      const around = askAround(context, table.getRange());
      const body = await this.calculation.read(context, () => part.body.load(CELLS));
      return { ...sourceOf(part), rows: cellValues(body), ...(await around()) };
    });
  }

  private readPlace(place: Place): Promise<SourceRows> {
    return ask(`Excel could not read the cells on ${place.sheet}`, async (context) => {
      const range = context.workbook.worksheets
        .getItem(place.sheet)
        .getRangeByIndexes(place.row, place.column, place.rows, place.columns);
      const around = askAround(context, range);
      const cells = await this.calculation.read(context, () => range.load(CELLS));
      return { ...headed(place, cellValues(cells)), ...(await around()) };
    });
  }

  selection(): Promise<SourceRows> {
    return ask("Excel could not read the selection", async (context) => {
      const selected = context.workbook.getSelectedRange().load("cellCount");
      // Only the part with something in it: a whole column selected is a million cells.
      const used = await this.calculation.read(context, () => selected.getUsedRangeOrNullObject(true).load(CELLS));
      if (selected.cellCount === 1) {
        throw new Error("One cell is selected. Select the whole block, its heading row included, or choose a table.");
      }
      if (used.isNullObject) {
        throw new Error("The selected cells are empty. Select the whole block, its heading row included.");
      }
      const around = askAround(context, used);
      await context.sync();
      return { ...headed(placeOf(used), cellValues(used)), ...(await around()) };
    });
  }

  sheetNames(): Promise<string[]> {
    return ask("Excel could not list the sheets", async (context) => {
      const { worksheets } = context.workbook;
      worksheets.load("items/name");
      await context.sync();
      return worksheets.items.map(({ name }) => name);
    });
  }

  firstCells(): Promise<{ sheet: string; value: CellValue }[]> {
    return ask("Excel could not read the sheets", async (context) => {
      const worksheets = context.workbook.worksheets.load("items/name");
      await context.sync();
      const cells = worksheets.items.map((one) => one.getRangeByIndexes(0, 0, 1, 1).load(CELLS));
      await context.sync();
      return worksheets.items.map(({ name }, i) => ({
        sheet: name,
        value: cellValues(cells[i] as Excel.Range)[0]?.[0] ?? null,
      }));
    });
  }

  async addSheet(sheet: Sheet, work: Work = {}): Promise<string> {
    const described = laidOut(sheet);
    work.onProgress?.(0);
    work.signal?.throwIfAborted();
    return ask("Excel could not add the sheet", (context) =>
      addSheet(context, described, work, (refused) => this.remarks.say("page", refused)),
    );
  }

  readSheet(name: string): Promise<CellValue[][]> {
    return ask(`Excel could not read ${name}`, async (context) => {
      const worksheet = context.workbook.worksheets.getItem(name);
      const used = await this.calculation.read(context, () =>
        worksheet.getUsedRangeOrNullObject(true).load(`rowIndex,columnIndex,columnCount,${CELLS}`),
      );
      if (used.isNullObject) return [];
      const { rowIndex, columnIndex, columnCount } = used;
      const blank = (length: number): CellValue[] => Array(length).fill(null);
      const above = Array.from({ length: rowIndex }, () => blank(columnIndex + columnCount));
      return [...above, ...cellValues(used).map((row) => [...blank(columnIndex), ...row])];
    });
  }

  isFormula(sheet: string, row: number, column: number): Promise<boolean> {
    return ask(`Excel could not read a cell of ${sheet}`, async (context) => {
      const cell = context.workbook.worksheets.getItem(sheet).getRangeByIndexes(row, column, 1, 1);
      cell.load("formulas,values");
      await context.sync();
      // A text that begins like a formula stands in both.
      const [formula, value] = [cell.formulas[0]?.[0], cell.values[0]?.[0]];
      return typeof formula === "string" && formula.startsWith("=") && formula !== value;
    });
  }

  async write(sheet: string, cells: readonly Cell[]): Promise<void> {
    const filled = cells.filter(({ content }) => content);
    if (filled.length > 0) await writeCells(sheet, filled);
  }

  async append(additions: readonly Addition[]): Promise<void> {
    const filled = additions.filter((one) => !("table" in one) || one.rows.length > 0);
    if (filled.length === 0) return;
    return ask(failedToAdd(filled), (context) =>
      append(context, filled, (refused) => this.remarks.say("page", refused)),
    );
  }

  async takeInRows(name: string, rows: number): Promise<void> {
    if (rows === 0) return;
    return ask(`Excel could not take the rows into the table ${name}`, (context) => takeInRows(context, name, rows));
  }

  activeSheet(): Promise<string> {
    return ask("Excel could not tell which sheet is shown", async (context) => {
      const shown = context.workbook.worksheets.getActiveWorksheet().load("name");
      await context.sync();
      return shown.name;
    });
  }

  select({ sheet, row, column, rows, columns }: Place): Promise<void> {
    return ask(`Excel could not show the cell on ${sheet}`, async (context) => {
      const worksheet = context.workbook.worksheets.getItem(sheet);
      worksheet.activate();
      worksheet.getRangeByIndexes(row, column, rows, columns).select();
      await context.sync();
    });
  }

  settings(): Promise<unknown> {
    return ask("Excel could not read the settings", readSettings);
  }

  async keepSettings(settings: unknown): Promise<void> {
    const text = settingsText(settings);
    return ask("Excel could not keep the settings", (context) => keepSettings(context, text));
  }

  onChange(callback: () => void): () => void {
    // Where Excel does not calculate by itself, reading asks for it: no news, and reading again would never end.
    const calculated = (): void => {
      if (this.calculation.isAutomatic) callback();
    };
    // Excel may tell that it has calculated before the answers of functions stand in their cells.
    const stops = [listen(callback, calculated), this.runs.onDelivered(calculated)];
    return () => {
      for (const stop of stops) stop();
    };
  }

  onRemarks(callback: (remarks: Remarks) => void): () => void {
    askForDoubts((about, doubt) => this.remarks.say(about, doubt));
    return this.remarks.listen(callback);
  }
}
