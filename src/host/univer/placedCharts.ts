/** The charts of a workbook, and how it holds them among its data. */

import type { IResources } from "@univerjs/core";
import type { Chart, Sheet } from "../../sheet/sheet";

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

/** The name under which a workbook holds its charts, as it does what Univer's plugins give it. */
export const CHARTS_RESOURCE = "SHEET_POURWRIGHT_CHARTS_PLUGIN";

/** The charts of described sheets as a workbook holds them; none where there are none. */
export function chartsResource(sheets: readonly Sheet[], idOf: (sheet: string) => string): IResources {
  const charts = sheets.flatMap((sheet) => (sheet.charts ?? []).map((chart) => ({ sheetId: idOf(sheet.name), chart })));
  if (charts.length === 0) return [];
  const ids = new Map(sheets.map(({ name }) => [name, idOf(name)]));
  return [{ name: CHARTS_RESOURCE, data: writeCharts({ ids, charts }) }];
}

export const writeCharts = ({ ids, charts }: PlacedCharts) => JSON.stringify({ ids: [...ids], charts });

export function readCharts(text: string): PlacedCharts {
  const { ids, charts } = JSON.parse(text) as { ids: [string, string][]; charts: PlacedChart[] };
  return { ids: new Map(ids), charts };
}
