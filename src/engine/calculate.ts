/** The formula engine without a spreadsheet around it: needs no browser. */

import {
  generateRandomId,
  type ICellData,
  ICommandService,
  type IWorkbookData,
  LocaleType,
  Univer,
  UniverInstanceType,
} from "@univerjs/core";
import {
  FormulaDataModel,
  ISuperTableService,
  SetFormulaCalculationNotificationMutation,
  SetFormulaCalculationResultMutation,
  SetFormulaCalculationStartMutation,
  UniverFormulaEnginePlugin,
} from "@univerjs/engine-formula";
import type { Sheet } from "../sheet/sheet";
import { type Bundle, loadBundle } from "./bundle";
import { type ErrorValue, readCell } from "./cells";
import { cellContent, sheetSize } from "./content";
import { executors } from "./functions";
import { type PlacedTable, tablesOf } from "./references";

/** A cell of a calculated sheet: exact; an error comes with its code and, from our functions, its message. */
export type Calculated = string | number | boolean | null | ErrorValue;

type Matrix = Record<number, Record<number, ICellData | null>>;

/**
 * The values of all cells of these sheets, by sheet, row and column from 0, what formulas spill included. Rows end
 * with their last cell that holds anything; blanks before it are null.
 */
export async function calculate(sheets: readonly Sheet[], functions: Bundle): Promise<Calculated[][][]> {
  const univer = new Univer({ locale: LocaleType.EN_US });
  try {
    univer.registerPlugin(UniverFormulaEnginePlugin, { function: executors(loadBundle(functions)) });
    const data = workbookData(sheets);
    univer.createUnit(UniverInstanceType.UNIVER_SHEET, data);
    const injector = univer.__getInjector();

    // In the browser the table plugin tells the engine about tables.
    const tables = injector.get(ISuperTableService);
    for (const [i, sheet] of sheets.entries()) {
      for (const table of sheet.tables ?? []) {
        tables.registerTable(data.id, table.name, {
          sheetId: data.sheetOrder[i] as string,
          range: {
            startRow: table.row,
            startColumn: table.column,
            endRow: table.row + table.rows,
            endColumn: table.column + table.headings.length - 1,
          },
          titleMap: new Map(table.headings.map((heading, column) => [heading, column])),
        });
      }
    }

    const results = await run(injector.get(ICommandService));
    const spilled = injector.get(FormulaDataModel).getArrayFormulaCellData();
    return data.sheetOrder.map((id) =>
      values([
        (data.sheets[id]?.cellData ?? {}) as Matrix,
        (spilled[data.id]?.[id] ?? {}) as Matrix,
        (results[data.id]?.[id] ?? {}) as Matrix,
      ]),
    );
  } finally {
    univer.dispose();
  }
}

/** A workbook of these sheets' contents alone: looks change no number. */
function workbookData(sheets: readonly Sheet[]): IWorkbookData {
  const ids = sheets.map((_, i) => `sheet${i + 1}`);
  const tables = tablesOf(sheets);
  return {
    // Never used before: the engine keeps what it parsed by workbook and text of the formula, tables included.
    id: generateRandomId(),
    name: "",
    appVersion: "",
    locale: LocaleType.EN_US,
    styles: {},
    sheetOrder: ids,
    sheets: Object.fromEntries(
      sheets.map((sheet, i) => {
        const id = ids[i] as string;
        return [id, { id, name: sheet.name, cellData: contentsOf(sheet, tables), ...sheetSize(sheet) }];
      }),
    ),
  };
}

function contentsOf({ name, cells }: Sheet, tables: readonly PlacedTable[]) {
  const rows: Record<number, Record<number, ICellData>> = {};
  for (const { row, column, content } of cells) {
    if (content) rows[row] = { ...rows[row], [column]: cellContent(content, { sheet: name, row, column }, tables) };
  }
  return rows;
}

type Results = Record<string, Record<string, Matrix>>;

function run(commands: ICommandService): Promise<Results> {
  return new Promise((resolve, reject) => {
    let results: Results = {};
    commands.onCommandExecuted(({ id, params }) => {
      if (id === SetFormulaCalculationResultMutation.id) results = (params as { unitData: Results }).unitData;
      if (id === SetFormulaCalculationNotificationMutation.id) {
        if ((params as { functionsExecutedState?: number }).functionsExecutedState === undefined) return;
        resolve(results);
      }
    });
    commands.executeCommand(SetFormulaCalculationStartMutation.id, { forceCalculation: true }).catch(reject);
  });
}

/** The later layers stand over the earlier ones. */
function values(layers: readonly Matrix[]): Calculated[][] {
  const rows: Calculated[][] = [];
  for (const layer of layers) {
    for (const [row, cells] of Object.entries(layer)) {
      for (const [column, cell] of Object.entries(cells)) {
        const value = readCell(cell);
        if (value === null) continue;
        rows[Number(row)] ??= [];
        (rows[Number(row)] as Calculated[])[Number(column)] = value;
      }
    }
  }
  return Array.from(rows, (row) => Array.from(row ?? [], (value) => value ?? null));
}
