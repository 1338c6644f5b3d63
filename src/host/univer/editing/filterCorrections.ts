/** Corrections of the filters of tables, table plugin, version 0.25.1. */

import { SheetTableService, TABLE_FILTER_EMPTY_VALUE, TableManager } from "@univerjs/preset-sheets-table";

export type Table = NonNullable<ReturnType<TableManager["getTable"]>>;
type Filters = ReturnType<Table["getTableFilters"]>;

/** A text that holds nothing looks blank, and is: formulas and other programs leave such ones. */
const isBlank = (value: unknown) => value === null || value === undefined || value === "";

// A choice is what its cell shows: a file names numbers as texts, and the plugin takes those for something else.
const shownIn = SheetTableService.prototype.getCellValueWithConditionType;
SheetTableService.prototype.getCellValueWithConditionType = function (...of) {
  const value = shownIn.apply(this, of) as unknown;
  return isBlank(value) ? undefined : String(value);
};

const prototype = prototypeOfFilters();
const passes = prototype.getExecuteFunc;
prototype.getExecuteFunc = function (sheet, range, column, filter) {
  if (filter.filterType !== "manual") return passes.call(this, sheet, range, column, filter);
  const named = (value: unknown) => (isBlank(value) ? TABLE_FILTER_EMPTY_VALUE : String(value));
  const chosen = new Set(filter.values.map(named));
  return (value: unknown) => chosen.has(named(value));
};

/** The rows that a filter is to hide, for which it need not look at the cells. */
let given: ReadonlySet<number> | null = null;
const filterAnew = prototype.doFilter;
prototype.doFilter = function (...of) {
  if (!given) return filterAnew.apply(this, of);
  const rows = new Set(given);
  Object.assign(this, { _filterOutRows: rows });
  return rows;
};

/** Lets a table's filter hide these rows and no others, until it is set anew. */
export function hideRows(tables: TableManager, unitId: string, table: Table, rows: ReadonlySet<number>): void {
  const column = filteredColumn(table);
  if (column === undefined) return;
  given = rows;
  try {
    // The same filter once more: all that follow filters are told.
    tables.addFilter(unitId, table.getId(), column, table.getTableFilters().getColumnFilter(column));
  } finally {
    given = null;
  }
}

/** The first column of a table that has a filter, counted in it; undefined where none has. */
function filteredColumn(table: Table): number | undefined {
  const { startColumn, endColumn } = table.getRange();
  const columns = Array.from({ length: endColumn - startColumn + 1 }, (_, i) => i);
  return columns.find((column) => table.getTableFilters().getColumnFilter(column));
}

/** The plugin does not export it. */
function prototypeOfFilters(): Filters {
  const manager = new TableManager(undefined as never, undefined as never);
  const cell = { startRow: 0, startColumn: 0, endRow: 0, endColumn: 0 };
  const table = manager.getTable("", manager.addTable("", "", "any", cell, ["any"])) as Table;
  return Object.getPrototypeOf(table.getTableFilters());
}

// What a file or the browser kept is opened with the rows hidden that were hidden, whatever the filter would do now:
// other programs too filter anew only when they are told to.
const fromJSON = TableManager.prototype.fromJSON;
TableManager.prototype.fromJSON = function (unitId, data) {
  fromJSON.call(this, unitId, data);
  for (const [sheetId, { tableFilteredOutRows }] of Object.entries(data)) {
    if (tableFilteredOutRows) keepHidden(this.getTablesBySubunitId(unitId, sheetId), tableFilteredOutRows);
  }
};

/** Each filter hides of these rows those that it would, and those that none of them would. */
function keepHidden(tables: readonly Table[], hidden: readonly number[]): void {
  const filtered = tables
    .filter((table) => filteredColumn(table) !== undefined)
    .map((table) => ({ table, filters: table.getTableFilters(), own: table.getTableFilters().getFilterOutRows() }));
  for (const { table, filters, own } of filtered) {
    const { startRow, endRow } = table.getTableFilterRange();
    const isTheirs = (row: number) => !own?.has(row) && filtered.some((other) => other.own?.has(row));
    const rows = hidden.filter((row) => row >= startRow && row <= endRow && !isTheirs(row));
    Object.assign(filters, { _filterOutRows: new Set(rows) });
  }
}
