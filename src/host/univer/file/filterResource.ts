/** A sheet's own filter as the filter plugin keeps it, and back. */

import type { IRange } from "@univerjs/core";
import type { BookSheet, Filter } from "../../../file/book";
import { areaOf, type Extent, rangeOf } from "./areas";
import { type SheetCriterion, sheetCriterion, sheetCriterionOf } from "./criteria";

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
  const hidden = rows.flatMap(({ row, hidden }) => (hidden && isFilteredRow(filter, row) ? [row] : []));
  return { ref: rangeOf(area, extent), filterColumns, cachedFilteredOut: hidden };
}

/** Whether a filter that lets not everything through decides over this row. */
export function isFilteredRow(filter: Filter | null, row: number): boolean {
  if (!filter || filter.columns.length === 0) return false;
  return row > filter.area.row && row < filter.area.row + filter.area.rows;
}

export function filterOf(json: FilterJson | undefined, original: Filter | null, extent: Extent): Filter | null {
  if (!json) return null;
  const area = areaOf(json.ref, extent);
  const columns = (json.filterColumns ?? []).map((column) => sheetCriterionOf(column, area.column));
  // What is not worked out here stays as long as nobody filters by its column.
  const others = (original?.columns ?? []).filter(
    (one) => one.other && !columns.some(({ column }) => column === one.column),
  );
  return { area, columns: [...columns, ...others].sort((a, b) => a.column - b.column) };
}
