import type { Cell, Content, Sheet } from "../../sheet/sheet";
import { sheetName } from "../../sheet/sheetName";
import {
  type CellValue,
  DamagedSettings,
  type Host,
  type Place,
  type Source,
  type SourceRows,
  type Work,
} from "../host";
import { DAMAGED, SETTINGS } from "../settingsKeys";
import { addRows } from "./addRows";
import { askAround, placeOf, WHERE } from "./around";
import { Calculation } from "./calculation";
import { contentsOf, layOut } from "./layOut";
import { spanOf } from "./rectangles";
import { closedAt, refuseClosed, sentence } from "./sentences";
import { takeInRows } from "./takeInRows";
import { writeSheet } from "./writeSheet";

/** Settings go into the file and must stay small beside it. */
const LONGEST_SETTINGS = 1_000_000;

/** What is loaded of a range to know its cells exactly. */
const CELLS = "values,valueTypes";

/** Excel as a host. Each method makes the same few calls to Excel, however many rows there are. */
export class ExcelHost implements Host {
  private readonly calculation: Calculation;

  /** @param waits the waits, in milliseconds, for cells that Excel is still working on */
  constructor(waits?: readonly number[]) {
    this.calculation = new Calculation(waits);
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
      const used = await this.calculation.read(context, () =>
        selected.getUsedRangeOrNullObject(true).load(`${WHERE},${CELLS}`),
      );
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

  async addSheet(sheet: Sheet, { signal, onProgress }: Work = {}): Promise<string> {
    const layout = layOut(sheet);
    // A stop is heard between two calls to Excel.
    const turn = (share: number) => {
      onProgress?.(share);
      signal?.throwIfAborted();
    };
    turn(0);
    return ask("Excel could not add the sheet", async (context) => {
      const { workbook } = context;
      const worksheets = workbook.worksheets.load("items/name");
      const tables = workbook.tables.load("items/name");
      const names = workbook.names.load("items/name");
      const protection = workbook.protection.load("protected");
      const shown = workbook.worksheets.getActiveWorksheet().load("id");
      await context.sync();

      if (protection.protected) {
        throw new Error(
          "The workbook is protected, so no sheet can be added. Take the protection off (Review tab, Protect Workbook) and try again.",
        );
      }
      refuseTakenNames(sheet, [...tables.items, ...names.items]);
      const name = sheetName(
        sheet.name,
        worksheets.items.map((one) => one.name),
      );
      turn(0.1);
      // It gets its real name last: until then a name that nobody else uses tells which sheet to take away again.
      const draft = `Pourwright ${crypto.randomUUID().slice(0, 8)}`;
      let key = draft;
      try {
        const added = worksheets.add(draft).load("id");
        await context.sync();
        key = added.id;
        turn(0.3);
        context.application.suspendApiCalculationUntilNextSync();
        writeSheet(added, sheet, layout);
        await context.sync();
        turn(0.9);
        // Who suspends the calculation has to ask for it again.
        context.application.calculate("Recalculate");
        added.activate();
        added.name = name;
        await context.sync();
        onProgress?.(1);
        return name;
      } catch (error) {
        const why = signal?.aborted ? "Stopped." : sentence("Excel could not add the sheet", error).message;
        await takeAway(key, shown.id, why, error);
        throw error;
      }
    });
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

  async write(sheet: string, cells: readonly Cell[]): Promise<void> {
    const filled = cells.filter(({ content }) => content);
    if (filled.length === 0) return;
    const { row, column, rows, columns } = spanOf(filled);
    const { constants, formulas } = contentsOf(filled, { row, column, rows, columns });
    return ask(`Excel could not write on ${sheet}`, async (context) => {
      const worksheet = context.workbook.worksheets.getItem(sheet);
      worksheet.load(closedAt());
      await context.sync();
      refuseClosed(worksheet);
      // One command for all numbers and texts, the cells between left as they are: so Excel does it as a whole or not
      // at all, and replaces a formula that spills together with what it spilled. Formulas, which may be refused, first.
      const range = worksheet.getRangeByIndexes(row, column, rows, columns);
      if (formulas) range.formulas = formulas;
      range.values = constants;
      await context.sync();
    });
  }

  async addRows(
    name: string,
    headings: readonly string[],
    rows: readonly (readonly (Content | null)[])[],
  ): Promise<void> {
    if (rows.length === 0) return;
    return ask(`Excel could not add to the table ${name}`, (context) => addRows(context, name, headings, rows));
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
    return ask("Excel could not read the settings", async (context) => {
      const setting = context.workbook.settings.getItemOrNullObject(SETTINGS).load("value");
      await context.sync();
      if (setting.isNullObject) return null;
      const text = String(setting.value);
      try {
        return JSON.parse(text);
      } catch {
        context.workbook.settings.add(DAMAGED, text);
        setting.delete();
        await context.sync();
        throw new DamagedSettings();
      }
    });
  }

  async keepSettings(settings: unknown): Promise<void> {
    const text = JSON.stringify(settings);
    if (text.length > LONGEST_SETTINGS) throw new Error("The settings are too long to be kept in the workbook.");
    return ask("Excel could not keep the settings", async (context) => {
      context.workbook.settings.add(SETTINGS, text);
      await context.sync();
    });
  }

  onChange(callback: () => void): () => void {
    let live = true;
    const changed = async (): Promise<void> => {
      if (live) callback();
    };
    const calculated = async (): Promise<void> => {
      // Where Excel does not calculate by itself, reading asks for it: no news, and reading again would never end.
      if (this.calculation.isAutomatic) await changed();
    };
    const stops = [...CHANGES.map((event) => hear(event, changed)), hear(CALCULATED, calculated)];
    return () => {
      live = false;
      for (const stop of stops) stop();
    };
  }
}

// --- listening -------------------------------------------------------------------------------------------------

type Event = (workbook: Excel.Workbook) => {
  add(handler: () => Promise<void>): { remove(): void };
};

/**
 * After these, tables may have changed or another sheet is shown. What is sorted, filtered, hidden and renamed is told by
 * newer Excel than the manifest asks for.
 */
const CHANGES: readonly Event[] = [
  ({ worksheets }) => worksheets.onChanged,
  ({ worksheets }) => worksheets.onAdded,
  ({ worksheets }) => worksheets.onDeleted,
  ({ worksheets }) => worksheets.onRowSorted,
  ({ worksheets }) => worksheets.onColumnSorted,
  ({ worksheets }) => worksheets.onNameChanged,
  ({ worksheets }) => worksheets.onRowHiddenChanged,
  ({ worksheets }) => worksheets.onActivated,
  ({ tables }) => tables.onAdded,
  ({ tables }) => tables.onDeleted,
];
const CALCULATED: Event = ({ worksheets }) => worksheets.onCalculated;

/** Has an event heard, by itself, so that one which Excel does not know leaves the others; gives the way to stop. */
function hear(event: Event, handler: () => Promise<void>): () => void {
  const hearing = Excel.run({ delayForCellEdit: true }, async (context) => {
    const heard = event(context.workbook).add(handler);
    await context.sync();
    return { context, heard };
  });
  // What Excel refuses to tell stays unheard: who writes must read the cells again just before.
  hearing.catch(() => {});
  return () => {
    hearing
      .then(({ context, heard }) =>
        Excel.run(context, async () => {
          heard.remove();
          await context.sync();
        }),
      )
      .catch(() => {});
  };
}

/** Runs a batch; what goes wrong becomes a sentence. */
async function ask<T>(failed: string, batch: (context: Excel.RequestContext) => Promise<T>): Promise<T> {
  try {
    return await Excel.run(batch);
  } catch (error) {
    throw sentence(failed, error);
  }
}

// --- reading ---------------------------------------------------------------------------------------------------

interface Parts {
  readonly table: Excel.Table;
  readonly header: Excel.Range;
  readonly body: Excel.Range;
}

/** A table's heading and rows, asked for; a total row belongs to neither. */
function partsOf(table: Excel.Table): Parts {
  return {
    table,
    header: table.getHeaderRowRange().load("values,rowIndex,columnIndex,columnCount"),
    body: table.getDataBodyRange().load("rowCount"),
  };
}

function sourceOf({ table, header, body }: Parts): Source {
  return {
    name: table.name,
    place: {
      sheet: table.worksheet.name,
      row: header.rowIndex,
      column: header.columnIndex,
      rows: 1 + body.rowCount,
      columns: header.columnCount,
    },
    headings: (header.values[0] ?? []).map(String),
  };
}

function cellValues(range: Excel.Range): CellValue[][] {
  return range.values.map((row, r) => row.map((value, c) => cellValue(value, range.valueTypes[r]?.[c])));
}

function cellValue(value: unknown, type: string | undefined): CellValue {
  if (value === "" || value === null || value === undefined) return null;
  if (type === "Error") return { error: String(value) };
  return typeof value === "number" || typeof value === "boolean" ? value : String(value);
}

/** Cells whose first row is the heading. */
function headed(place: Place, [first = [], ...rows]: CellValue[][]): SourceRows {
  const headings = first.map((cell) => (cell === null ? "" : typeof cell === "object" ? cell.error : String(cell)));
  return { name: "", place, headings, rows };
}

// --- writing ---------------------------------------------------------------------------------------------------

function refuseTakenNames(sheet: Sheet, taken: readonly { readonly name: string }[]): void {
  const used = new Set(taken.map(({ name }) => name.toLowerCase()));
  const double = sheet.tables?.find(({ name }) => used.has(name.toLowerCase()));
  if (double) {
    throw new Error(`The workbook already has something named ${double.name}. Rename or delete it, then try again.`);
  }
}

/** Takes an unfinished sheet away and shows what was shown before. */
async function takeAway(key: string, shown: string, why: string, cause: unknown): Promise<void> {
  try {
    await Excel.run(async (context) => {
      const { worksheets } = context.workbook;
      const unfinished = worksheets.getItemOrNullObject(key).load("id");
      await context.sync();
      if (unfinished.isNullObject) return;
      worksheets.getItem(shown).activate();
      unfinished.delete();
      await context.sync();
    });
  } catch {
    throw new Error(`${why} An unfinished sheet may be left at the end of the workbook; delete it yourself.`, {
      cause,
    });
  }
}
