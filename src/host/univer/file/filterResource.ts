/** A sheet's own filter as the filter plugin keeps it, and back. */

import type { IRange } from "@univerjs/core";
import type { BookSheet, Filter, FilterColumn } from "../../../file/book";
import { areaOf, type Extent, rangeOf } from "./areas";
import { type SheetCriterion, sheetCriterion, sheetCriterionOf, tableCriterion } from "./criteria";

export interface FilterJson {
  readonly ref: IRange;
  readonly filterColumns?: readonly SheetCriterion[];
  /** Rows that it hides. */
  readonly cachedFilteredOut?: readonly number[];
}

export type FiltersJson = Readonly<Record<string, FilterJson>>;

export function filterJson({ filter, rows }: BookSheet, extent: Extent): FilterJson | null {
  if (!filter) return null;
  const { area, columns } = filter;
  const filterColumns = columns.flatMap((column) => sheetCriterion(column, area.column) ?? []);
  const hidden = rows.flatMap(({ row, hidden }) => (hidden && isFilteredBySheet(filter, row) ? [row] : []));
  return { ref: rangeOf(area, extent), filterColumns, cachedFilteredOut: hidden };
}

/** Whether a sheet's own filter decides over this row. */
export const isFilteredBySheet = (filter: Filter | null, row: number): boolean =>
  isFilteredRow(filter, row, (column) => sheetCriterion(column, 0));

/** Whether a table's filter decides over this row. */
export const isFilteredByTable = (filter: Filter | null, row: number): boolean =>
  isFilteredRow(filter, row, tableCriterion);

/** A filter of which the plugin knows nothing hides nothing here: a row that is hidden is so by itself. */
function isFilteredRow(filter: Filter | null, row: number, criterion: (column: FilterColumn) => unknown): boolean {
  if (!filter?.columns.some(criterion)) return false;
  return row > filter.area.row && row < filter.area.row + filter.area.rows;
}

export function filterOf(json: FilterJson | undefined, original: Filter | null, extent: Extent): Filter | null {
  if (!json) return null;
  const area = areaOf(json.ref, extent);
  const columns = (json.filterColumns ?? []).map((column) => sheetCriterionOf(column, area.column));
  return { area, columns: withWordless(columns, original) };
}

/** What is not worked out here, such as a hidden button, stays as long as nobody filters by its column. */
export function withWordless(columns: readonly FilterColumn[], original: Filter | null): readonly FilterColumn[] {
  const others = (original?.columns ?? []).filter(
    (one) => !one.values && !one.custom && !columns.some(({ column }) => column === one.column),
  );
  return [...columns, ...others].sort((a, b) => a.column - b.column);
}
