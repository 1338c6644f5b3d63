/** The charts of a workbook, and how they follow their cells. */

import type { ICommandInfo } from "@univerjs/core";
import { adjustRangeOnMutation } from "@univerjs/preset-sheets-core";
import type { CellRange, Chart, Sheet } from "../../sheet/sheet";

/** A chart on its sheet. */
export interface PlacedChart {
  readonly sheetId: string;
  readonly chart: Chart;
}

export interface PlacedCharts {
  /** The sheets' ids by the names that the charts know them by. */
  readonly ids: ReadonlyMap<string, string>;
  readonly charts: readonly PlacedChart[];
}

type Cells = Omit<CellRange, "sheet">;

export function placeCharts(sheets: readonly Sheet[], idOf: (sheet: string) => string): PlacedCharts {
  const ids = new Map(sheets.map(({ name }) => [name, idOf(name)]));
  return {
    ids,
    charts: sheets.flatMap(({ name, charts = [] }) => charts.map((chart) => ({ sheetId: idOf(name), chart }))),
  };
}

/** The charts after rows or columns of their workbook came, went or moved; without their cells they are gone. */
export function followCells({ ids, charts }: PlacedCharts, mutation: Readonly<ICommandInfo>): PlacedCharts {
  const changed = (mutation.params as { subUnitId?: string } | undefined)?.subUnitId;
  const follow = <R extends Cells>(range: R, sheetId: string | undefined): R | undefined =>
    sheetId === changed ? moved(range, mutation) : range;
  return {
    ids,
    charts: charts.flatMap(({ sheetId, chart }) => {
      const place = follow(chart.place, sheetId);
      const series = chart.series.flatMap((one) => {
        const x = follow(one.x, ids.get(one.x.sheet));
        const y = follow(one.y, ids.get(one.y.sheet));
        const name = typeof one.name === "string" ? one.name : follow(one.name, ids.get(one.name.sheet));
        return x && y && name !== undefined ? [{ name, x, y }] : [];
      });
      return place && series.length > 0 ? [{ sheetId, chart: { ...chart, place, series } }] : [];
    }),
  };
}

function moved<R extends Cells>(range: R, mutation: Readonly<ICommandInfo>): R | undefined {
  const { row, column, rows, columns } = range;
  const now = adjustRangeOnMutation(
    { startRow: row, startColumn: column, endRow: row + rows - 1, endColumn: column + columns - 1 },
    mutation as Parameters<typeof adjustRangeOnMutation>[1],
  );
  if (!now) return undefined;
  return {
    ...range,
    row: now.startRow,
    column: now.startColumn,
    rows: now.endRow - now.startRow + 1,
    columns: now.endColumn - now.startColumn + 1,
  };
}
