/** Tables of a file as the table plugin keeps them, and back. */

import type { BookTable, FilterColumn, TableColumn } from "../../../file/book";
import { criterionOf, type TableCriterion, tableCriterion } from "./criteria";
import { knownNames } from "./fileFormula";
import { withWordless } from "./filterResource";

/** A table in the plugin's own words. */
export interface TableJson {
  readonly id: string;
  readonly name: string;
  readonly range: { startRow: number; startColumn: number; endRow: number; endColumn: number };
  readonly options: { showHeader?: boolean; showFooter?: boolean; tableStyleId?: string };
  readonly filters: { tableColumnFilterList?: (TableCriterion | null)[] };
  readonly columns: readonly { id: string; displayName: string }[];
  readonly meta?: { totals?: boolean } | null;
}

export interface SheetTables {
  readonly tables?: readonly TableJson[];
  /** Rows that the filters of the tables hide. */
  readonly tableFilteredOutRows?: readonly number[];
}

export type TablesJson = Readonly<Record<string, SheetTables>>;

export const columnId = (table: string, index: number) => `${table}.${index}`;

/**
 * A table of the file. Univer knows no totals: its table ends above them, or they would be summed up and filtered like
 * other rows.
 */
export function tableJson({ name, area, columns, hasHeadings, hasTotals, filter }: BookTable): TableJson {
  const known = knownNames(columns.map(({ heading }) => heading));
  const criteria = columns.map((_, i) => {
    const column = filter?.columns.find((one) => one.column === i);
    return (column && tableCriterion(column)) ?? null;
  });
  return {
    id: name,
    name,
    range: {
      startRow: area.row,
      startColumn: area.column,
      endRow: area.row + area.rows - 1 - (hasTotals ? 1 : 0),
      endColumn: area.column + area.columns - 1,
    },
    options: { showHeader: hasHeadings, showFooter: false },
    filters: { tableColumnFilterList: criteria.some(Boolean) ? criteria : [] },
    columns: known.map((displayName, i) => ({
      id: columnId(name, i),
      displayName,
      dataType: "none",
      formula: "",
      meta: {},
      style: {},
    })),
    meta: hasTotals ? { totals: true } : {},
  };
}

/**
 * A table as the file will hold it; `original` is what the file held under its id. Headings are what their cells say.
 * `isTotals` says whether a row is one of totals: it may have been deleted, of which the table knows nothing.
 */
export function tableOf(
  { name, range, options, columns, filters, meta }: TableJson,
  original: BookTable | undefined,
  heading: (column: number) => string,
  isTotals: (row: number) => boolean,
): BookTable {
  const hasHeadings = options.showHeader ?? true;
  const hasTotals = meta?.totals === true && isTotals(range.endRow + 1);
  const columnOf = (id: string, displayName: string, i: number): TableColumn => {
    const before = original?.columns.find((_, index) => columnId((original as BookTable).name, index) === id);
    const unnamed =
      before && knownNames((original as BookTable).columns.map((one) => one.heading)).includes(displayName);
    const said = hasHeadings ? heading(range.startColumn + i) : "";
    return { ...before, heading: said || (unnamed && before.heading) || displayName };
  };
  const criteria = (filters.tableColumnFilterList ?? []).flatMap((one, i) => (one ? [criterionOf(one, i)] : []));
  const area = {
    row: range.startRow,
    column: range.startColumn,
    rows: range.endRow - range.startRow + 1 + (hasTotals ? 1 : 0),
    columns: range.endColumn - range.startColumn + 1,
  };
  const rows = area.rows - (hasTotals ? 1 : 0);
  return {
    name,
    area,
    hasHeadings,
    hasTotals,
    columns: columns.map(({ id, displayName }, i) => columnOf(id, displayName, i)),
    filter: filterOf(original, { ...area, rows }, criteria),
    look: original?.look ?? null,
    stripes: original?.stripes ?? false,
  };
}

/** A table shows its filter's buttons, except where the file hid them and nothing was filtered since. */
function filterOf(original: BookTable | undefined, area: BookTable["area"], criteria: readonly FilterColumn[]) {
  if (original && !original.filter && criteria.length === 0) return null;
  return { area, columns: withWordless(criteria, original?.filter ?? null) };
}
