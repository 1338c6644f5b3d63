import type { Chart } from "../sheet";
import type { Plot } from "./data";
import { shown } from "./scale";

/** What a chart shows, for those who do not see it. */
export function chartText({ kind, title, series }: Chart): string {
  const what = kind === "bars" ? "Bars" : "Lines of points";
  const sheets = [...new Set(series.map(({ y }) => y.sheet))].join(", ");
  const names = series.flatMap(({ name }) => (typeof name === "string" ? [name] : []));
  return `${what}: ${title}. ${names.length > 0 ? `${names.join("; ")}. ` : ""}The figures stand on the sheet ${sheets}.`;
}

/** The same with the figures it shows now. */
export function chartTextWithFigures(chart: Chart, plots: readonly Plot[]): string {
  const figures = plots.map(({ name, points }) => {
    const list = points.map(({ x, y }) => `${x}: ${y === null ? "no figure" : shown(y, chart.format)}`);
    return `${name}: ${list.join(", ") || "no figures yet"}.`;
  });
  return [chartText(chart), ...figures].join(" ");
}
