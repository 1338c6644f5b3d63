/** How the charts of a workbook follow their cells. */

import type { ICommandInfo } from "@univerjs/core";
import { adjustRangeOnMutation } from "@univerjs/preset-sheets-core";
import type { CellRange } from "../../sheet/sheet";
import type { PlacedCharts } from "./placedCharts";

type Cells = Omit<CellRange, "sheet">;

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
