/** Rows for tables of the open workbook, and sheets with new tables. */

import {
  generateRandomId,
  type ICellData,
  type Injector,
  type IRange,
  mergeWorksheetSnapshotWithDefault,
  type Workbook,
  type Worksheet,
} from "@univerjs/core";
import {
  InsertRowCommand,
  InsertRowMutation,
  InsertSheetMutation,
  RemoveRowMutation,
  RemoveSheetMutation,
  SheetInterceptorService,
} from "@univerjs/preset-sheets-core";
import {
  AddSheetTableMutation,
  DeleteSheetTableMutation,
  SetSheetTableMutation,
  TableManager,
} from "@univerjs/preset-sheets-table";
import { reader } from "../../engine/cells";
import { cellContent } from "../../engine/content";
import { type PlacedTable, tablesOf } from "../../engine/references";
import type { Addition, NewRows } from "../../sheet/addition";
import type { Sheet } from "../../sheet/sheet";
import { sheetName } from "../../sheet/sheetName";
import { addRules, choiceRules } from "./editing/choices";
import type { Consequence } from "./editing/edits";
import { followGrowth } from "./editing/followGrowth";
import { filledRows, written } from "./editing/newRows";
import { asOneStep } from "./oneStep";
import { placedTables } from "./placedTables";
import { tableData, worksheetData } from "./workbook";

type Change = (one: Consequence) => void;

/** Adds rows to tables, and sheets with new ones, in one step. */
export function append(injector: Injector, workbook: Workbook, additions: readonly Addition[]): void {
  asOneStep(injector, workbook.getUnitId(), (change) => {
    const sheets: [Sheet, string][] = [];
    for (const one of additions) {
      if ("table" in one) addRows(injector, workbook, one, change);
      else {
        const { id, changes } = newSheet(injector, workbook, one);
        changes.forEach(change);
        sheets.push([one, id]);
      }
    }
    for (const [sheet, id] of sheets) addChoices(injector, workbook, sheet, id);
  });
}

/** The lists of choices of a sheet that was just added. */
export function addChoices(injector: Injector, workbook: Workbook, { tables = [] }: Sheet, id: string): void {
  const all = placedTables(injector, workbook);
  addRules(
    injector,
    workbook,
    id,
    tables.flatMap((table) => choiceRules(table, all)),
  );
}

/** A sheet with its tables as Univer adds it; refuses a table whose name is taken. */
export function newSheet(
  injector: Injector,
  workbook: Workbook,
  sheet: Sheet,
): { name: string; id: string; changes: Consequence[] } {
  const here = placedTables(injector, workbook);
  refuseTaken(sheet, here);
  const name = sheetName(
    sheet.name,
    workbook.getSheets().map((one) => one.getName()),
  );
  const id = generateRandomId();
  const unitId = workbook.getUnitId();
  const described = worksheetData(id, { ...sheet, name }, [...here, ...tablesOf([{ ...sheet, name }])]);
  const data = mergeWorksheetSnapshotWithDefault(described);
  const added: Consequence = {
    redos: [{ id: InsertSheetMutation.id, params: { unitId, index: workbook.getSheets().length, sheet: data } }],
    undos: [{ id: RemoveSheetMutation.id, params: { unitId, subUnitId: id, subUnitName: name } }],
  };
  // In the same turn as the sheet: a formula that is calculated before its table is there stays #NAME? for good.
  const tables = (sheet.tables ?? []).map((table): Consequence => {
    const { name: tableName, range, columns } = tableData(table);
    const ids = { unitId, subUnitId: id, tableId: generateRandomId() };
    const params = { ...ids, name: tableName, range, header: table.headings, options: { columns } };
    return {
      redos: [{ id: AddSheetTableMutation.id, params }],
      undos: [{ id: DeleteSheetTableMutation.id, params: ids }],
    };
  });
  return { name, id, changes: [added, ...tables] };
}

function refuseTaken(sheet: Sheet, here: readonly PlacedTable[]): void {
  const names = here.map((table) => table.name.toLowerCase());
  for (const table of sheet.tables ?? []) {
    if (names.includes(table.name.toLowerCase())) {
      throw new Error(`A table "${table.name}" is already in the workbook. Rename it first.`);
    }
    names.push(table.name.toLowerCase());
  }
}

/** Adds rows to a table: into the blank ones that it ends with, then below them and above a row of totals. */
function addRows(injector: Injector, workbook: Workbook, added: NewRows, change: Change): void {
  const { table: name, headings, rows } = added;
  const table = placedTables(injector, workbook).find((one) => one.name === name);
  const sheet = table && workbook.getSheetBySheetName(table.sheet);
  if (!table || !sheet) throw new Error(`The table "${name}" is not there any more. Choose another one.`);
  const columns = headings.map((heading) => table.headings.indexOf(heading));
  const missing = headings[columns.indexOf(-1)];
  if (missing !== undefined) {
    throw new Error(`The table "${name}" has no column "${missing}". Name the column so again, then try once more.`);
  }
  const last = table.row + table.rows;
  const first = last + 1 - freeRows(injector, sheet, table);
  const more = first + rows.length - 1 - last;
  if (more > 0) grow(injector, workbook, sheet, table, more, change);
  const value: Record<number, Record<number, ICellData>> = {};
  for (const [r, row] of rows.entries()) {
    for (const [i, content] of row.entries()) {
      if (!content) continue;
      const at = { sheet: table.sheet, row: first + r, column: table.column + (columns[i] as number) };
      value[at.row] = { ...value[at.row], [at.column]: cellContent(content, at, []) };
    }
  }
  change(written(injector, sheet, value));
}

/** How many blank rows a table ends with: one that was begun empty is filled from its first. */
function freeRows(injector: Injector, sheet: Worksheet, { row, column, rows, headings }: PlacedTable): number {
  const read = reader(injector, sheet);
  const isBlank = (r: number) => headings.every((_, c) => read(r, column + c) === null);
  let free = 0;
  while (free < rows && isBlank(row + rows - free)) free++;
  return free;
}

/** Lets a table end further down, with the formulas and looks of its columns, and what follows in the workbook. */
function grow(
  injector: Injector,
  workbook: Workbook,
  sheet: Worksheet,
  table: PlacedTable,
  more: number,
  change: Change,
): void {
  const { row, column, rows, headings, name, hasTotals } = table;
  const ids = { unitId: workbook.getUnitId(), subUnitId: sheet.getSheetId() };
  const next = row + rows + 1;
  const range = { startRow: row, endRow: next - 1, startColumn: column, endColumn: column + headings.length - 1 };
  if (hasTotals) refuseBeside(injector, workbook, table, next);
  else refuseFilled(injector, sheet, table, next, more);
  const spare = next + more - sheet.getRowCount();
  if (hasTotals) change(insertedRows(injector, sheet, next, more));
  else if (spare > 0) change(insertedRows(injector, sheet, sheet.getRowCount(), spare));
  const tableId = injector
    .get(TableManager)
    .getTableList(ids.unitId)
    .find((one) => one.name === name)?.id;
  const resized = (newRange: IRange) => [
    { id: SetSheetTableMutation.id, params: { ...ids, tableId, config: { updateRange: { newRange } } } },
  ];
  const endRow = next + more - 1;
  change({ redos: resized({ ...range, endRow }), undos: resized(range) });
  const rest = hasTotals ? null : followGrowth(injector, sheet, range, endRow);
  if (rest) change(rest);
  const area = { ...range, startRow: next, endRow };
  change(filledRows(injector, sheet, range, area, { startRow: row + 1, endRow: next - 1 }));
}

function refuseFilled(
  injector: Injector,
  sheet: Worksheet,
  { name, column, headings }: PlacedTable,
  next: number,
  more: number,
): void {
  const read = reader(injector, sheet);
  for (let row = next; row < next + more; row++) {
    if (headings.every((_, c) => read(row, column + c) === null)) continue;
    throw new Error(`There is something below the table "${name}". Move it away, then try once more.`);
  }
}

/** Rows are put in across the whole sheet: another table beside must not be torn apart by them. */
function refuseBeside(injector: Injector, workbook: Workbook, table: PlacedTable, next: number): void {
  const torn = placedTables(injector, workbook).find(
    ({ sheet, name, row, rows }) => sheet === table.sheet && name !== table.name && row < next && row + rows >= next,
  );
  if (!torn) return;
  throw new Error(
    `Rows cannot be added to ${table.name} above its totals: the table ${torn.name} stands beside it. Move one of the two away, then try once more.`,
  );
}

/** Whole rows put in before one, with what Univer has follow from that. */
function insertedRows(injector: Injector, sheet: Worksheet, startRow: number, count: number): Consequence {
  const ids = { unitId: sheet.getUnitId(), subUnitId: sheet.getSheetId() };
  const range = { startRow, endRow: startRow + count - 1, startColumn: 0, endColumn: sheet.getColumnCount() - 1 };
  const params = { ...ids, range };
  const {
    preRedos = [],
    redos,
    preUndos = [],
    undos,
  } = injector.get(SheetInterceptorService).onCommandExecute({ id: InsertRowCommand.id, params });
  return {
    redos: [...preRedos, { id: InsertRowMutation.id, params }, ...redos],
    undos: [...preUndos, { id: RemoveRowMutation.id, params }, ...undos],
  };
}
