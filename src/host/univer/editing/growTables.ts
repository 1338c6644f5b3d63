/** Tables take in what is typed or pasted right below them or right of their headings, as in other spreadsheets. */

import {
  type ICellData,
  type IMutationInfo,
  type Injector,
  IUniverInstanceService,
  type Workbook,
  type Worksheet,
} from "@univerjs/core";
import { SetSheetTableMutation, TableManager } from "@univerjs/preset-sheets-table";
import { headingText, reader } from "../../../engine/cells";
import { hasTotals } from "../placedTables";
import { type Consequence, cellsOf, type Edit, isFilled, sheetsOf } from "./edits";
import { followGrowth } from "./followGrowth";
import { filledRows, written } from "./newRows";

type Table = ReturnType<TableManager["getTablesBySubunitId"]>[number];

/** What an edit wrote into the cells of a sheet, and what stood there before. */
interface Change {
  readonly now: ReturnType<typeof cellsOf>;
  readonly before: ReturnType<typeof cellsOf>;
}

/** A sum below a table is no row of it, and neither is the line that says so. */
const TOTAL = /^(grand |sub-?)?(totals?|sums?)\b/i;

/** Lets tables grow after an edit; null where none does. */
export function growTables(injector: Injector, edit: Edit): Consequence | null {
  const workbook = injector.get(IUniverInstanceService).getUnit<Workbook>(edit.unitID);
  const redos: IMutationInfo[] = [];
  const undos: IMutationInfo[] = [];
  for (const id of sheetsOf(edit)) {
    const sheet = workbook?.getSheetBySheetId(id);
    if (!sheet) continue;
    const change = { now: cellsOf(edit.redoMutations, id), before: cellsOf(edit.undoMutations, id) };
    const tables = injector.get(TableManager).getTablesBySubunitId(edit.unitID, id);
    for (const table of tables) {
      const others = tables.filter((one) => one !== table);
      const grown =
        downwards(injector, sheet, table, others, change) ?? rightwards(injector, sheet, table, others, change);
      redos.push(...(grown?.redos ?? []));
      undos.unshift(...(grown?.undos ?? []));
    }
  }
  return redos.length > 0 ? { redos, undos } : null;
}

/** Over all rows that the edit filled from right below the table on, blank ones between them included. */
function downwards(
  injector: Injector,
  sheet: Worksheet,
  table: Table,
  others: readonly Table[],
  change: Change,
): Consequence | null {
  const { startColumn, endColumn, startRow, endRow } = table.getRange();
  if (hasTotals(table, sheet)) return null;
  const inColumns = [...change.now].map(([row, cells]) => ({
    row,
    cells: [...cells].filter(([column]) => column >= startColumn && column <= endColumn),
  }));
  const touched = inColumns.filter(({ row, cells }) => row > endRow && cells.length > 0);
  const filled = touched.filter(({ cells }) => cells.some(([, cell]) => isFilled(cell)));
  if (!touched.some(({ row }) => row === endRow + 1) || filled.length === 0) return null;
  const last = filled.reduce((most, { row }) => Math.max(most, row), endRow);
  if (touched.length === 1 && filled.every(({ cells }) => isTotal(cells.map(([, cell]) => cell)))) return null;
  const area = { startRow: endRow + 1, endRow: last, startColumn, endColumn };
  if (!isFree(injector, sheet, others, change, area)) return null;
  const resized = resize(
    table,
    sheet,
    { updateRange: { newRange: { ...table.getRange(), endRow: last } } },
    {
      updateRange: { newRange: table.getRange() },
    },
  );
  const content = filledRows(injector, sheet, table.getRange(), area, { startRow: startRow + 1, endRow });
  const rest = followGrowth(injector, sheet, table.getRange(), last);
  return {
    redos: [...resized.redos, ...rest.redos, ...content.redos],
    undos: [...content.undos, ...rest.undos, ...resized.undos],
  };
}

/** By a column whose heading was typed right of the table's own. */
function rightwards(
  injector: Injector,
  sheet: Worksheet,
  table: Table,
  others: readonly Table[],
  change: Change,
): Consequence | null {
  const { startRow, endRow, startColumn, endColumn } = table.getRange();
  const column = endColumn + 1;
  const cell = change.now.get(startRow)?.get(column);
  if (!table.isShowHeader() || !isFilled(cell) || cell?.f) return null;
  const read = reader(injector, sheet);
  const heading = headingText(read(startRow, column));
  const known = Array.from({ length: column - startColumn }, (_, i) => headingText(read(startRow, startColumn + i)));
  if (!/\p{L}/u.test(heading) || known.some((one) => one.toLowerCase() === heading.toLowerCase())) return null;
  if (!isFree(injector, sheet, others, change, { startRow, endRow, startColumn: column, endColumn: column }))
    return null;
  const operation = { rowColType: "column", index: column, count: 1 };
  const id = `${table.getId()}.${column}.${heading}`;
  const columnsJson = [{ id, displayName: heading, dataType: "none", formula: "", meta: {}, style: {} }];
  const resized = resize(
    table,
    sheet,
    { rowColOperation: { ...operation, operationType: "insert", columnsJson } },
    { rowColOperation: { ...operation, operationType: "delete" } },
  );
  const look = sheet.getCellMatrix().getValue(startRow, endColumn)?.s ?? null;
  const content = written(injector, sheet, { [startRow]: { [column]: { s: look } } });
  return { redos: [...resized.redos, ...content.redos], undos: [...content.undos, ...resized.undos] };
}

/** Whether nothing stands in an area but what the edit put into cells that were blank. */
function isFree(
  injector: Injector,
  sheet: Worksheet,
  others: readonly Table[],
  { now, before }: Change,
  area: { startRow: number; endRow: number; startColumn: number; endColumn: number },
): boolean {
  const crosses = others.some((table) => {
    const other = table.getRange();
    return (
      other.startRow <= area.endRow &&
      other.endRow >= area.startRow &&
      other.startColumn <= area.endColumn &&
      other.endColumn >= area.startColumn
    );
  });
  if (crosses) return false;
  const read = reader(injector, sheet);
  for (let row = area.startRow; row <= area.endRow; row++) {
    for (let column = area.startColumn; column <= area.endColumn; column++) {
      const isNew = isFilled(now.get(row)?.get(column)) && !isFilled(before.get(row)?.get(column));
      if (!isNew && read(row, column) !== null) return false;
    }
  }
  return true;
}

function isTotal(cells: readonly ICellData[]): boolean {
  const filled = cells.filter(isFilled);
  return filled.every(({ f }) => Boolean(f)) || filled.some(({ v }) => typeof v === "string" && TOTAL.test(v.trim()));
}

function resize(table: Table, sheet: Worksheet, to: object, from: object): Consequence {
  const mutation = (config: object) => ({
    id: SetSheetTableMutation.id,
    params: { unitId: sheet.getUnitId(), subUnitId: sheet.getSheetId(), tableId: table.getId(), config },
  });
  return { redos: [mutation(to)], undos: [mutation(from)] };
}
