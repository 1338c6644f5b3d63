/** Corrections of the table plugin, version 0.25.1. */

import { TableManager } from "@univerjs/preset-sheets-table";

type Table = NonNullable<ReturnType<TableManager["getTableById"]>>;
type Remembered = Pick<ReturnType<Table["getTableInfo"]>, "columns" | "meta">;

/** How it tells that a table has another place or size. */
interface Changes {
  readonly _tableRangeChanged$: { next(event: object): void };
}

const manager = TableManager.prototype;

// It writes a table's columns down in the order in which they came to it: with a column put in between, the names of a
// workbook that is opened again, or of a table that comes back when a removed column does, would stand over other
// columns. So it is given the order in which they stand.
const corrected = new WeakSet<object>();
function writeInOrder(table: Table | undefined): void {
  const prototype = table && (Object.getPrototypeOf(table) as Table);
  if (!prototype || corrected.has(prototype)) return;
  corrected.add(prototype);
  const toJSON = prototype.toJSON;
  prototype.toJSON = function () {
    return { ...toJSON.call(this), columns: this.getTableInfo().columns };
  };
}

const fromJSON = manager.fromJSON;
manager.fromJSON = function (unitId, data) {
  fromJSON.call(this, unitId, data);
  for (const { id } of this.getTableList(unitId)) writeInOrder(this.getTableById(unitId, id));
};

// Undo brings a removed table back without what else is known of it, such as its row of totals, and often without the
// names of its columns, by which formulas read them.
const removed = new Map<string, Remembered>();
const keyOf = (unitId: string, tableId: string) => `${unitId} ${tableId}`;

const deleteTable = manager.deleteTable;
manager.deleteTable = function (unitId, tableId) {
  const info = this.getTableById(unitId, tableId)?.getTableInfo();
  if (info) removed.set(keyOf(unitId, tableId), { columns: info.columns, meta: info.meta });
  deleteTable.call(this, unitId, tableId);
};

const addTable = manager.addTable;
manager.addTable = function (unitId, subUnitId, name, range, header, tableId, options) {
  const before = tableId === undefined ? undefined : removed.get(keyOf(unitId, tableId));
  const given = before ? { ...options, columns: options?.columns ?? before.columns } : options;
  const id = addTable.call(this, unitId, subUnitId, name, range, header, tableId, given);
  const table = this.getTableById(unitId, id);
  if (table && before) table.setTableMeta(before.meta);
  writeInOrder(table);
  return id;
};

// Where columns left of a table come or go, it would take the table's way for another width, and drop the first column
// name for a new last one. What resizes a table comes by its settings.
let isResized = false;
const setTable = manager.setTableByConfig;
manager.setTableByConfig = function (unitId, tableId, config) {
  isResized = true;
  try {
    setTable.call(this, unitId, tableId, config);
  } finally {
    isResized = false;
  }
};

const resize = manager.updateTableRange;
manager.updateTableRange = function (unitId, tableId, config) {
  const table = this.getTableById(unitId, tableId);
  const { newRange: range } = config;
  const oldRange = table?.getRange();
  const lost = oldRange ? range.startColumn - oldRange.startColumn : 0;
  // Of a table that loses its first columns it would drop the names of later ones.
  const isCutLeft = isResized && lost > 0 && range.endColumn === oldRange?.endColumn;
  if (!table || !oldRange || (isResized && !isCutLeft)) return resize.call(this, unitId, tableId, config);
  if (isCutLeft) for (let i = 0; i < lost; i++) table.removeColumn(0);
  table.setRange(range);
  (this as unknown as Changes)._tableRangeChanged$.next({
    ...{ unitId, tableId, range, oldRange },
    subUnitId: table.getSubunitId(),
  });
};
