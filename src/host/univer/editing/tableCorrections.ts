/** Corrections of the table plugin, version 0.25.1. */

import { TableManager } from "@univerjs/preset-sheets-table";

interface TableJson {
  readonly id: string;
  columns: unknown[];
}

// It writes a table's columns down in the order in which they came to it: with a column put in between, the names of a
// workbook that is opened again would stand over other columns. So it is given the order in which they stand.
const toJSON = TableManager.prototype.toJSON;
TableManager.prototype.toJSON = function (unitId) {
  const json = toJSON.call(this, unitId);
  for (const { tables } of Object.values(json) as { tables: TableJson[] }[]) {
    for (const table of tables)
      table.columns = this.getTable(unitId, table.id)?.getTableInfo().columns ?? table.columns;
  }
  return json;
};
