/** Corrections of the filters of tables, table plugin, version 0.25.1. */

import { SheetTableService, TABLE_FILTER_EMPTY_VALUE, TableManager } from "@univerjs/preset-sheets-table";

type Table = NonNullable<ReturnType<TableManager["getTable"]>>;
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
    if (!tableFilteredOutRows) continue;
    for (const table of this.getTablesBySubunitId(unitId, sheetId)) {
      const filters = table.getTableFilters();
      if (!filters.getFilterOutRows()) continue;
      const { startRow, endRow } = table.getTableFilterRange();
      const hidden = tableFilteredOutRows.filter((row) => row >= startRow && row <= endRow);
      Object.assign(filters, { _filterOutRows: new Set(hidden) });
    }
  }
};
