import type { CellRange, CellValue, Chart } from "../sheet";

/** A point, or a bar: its `x` is its name, and a bar without a number has no `y`. */
export interface Point {
  readonly x: number | string;
  readonly y: number | null;
}

/** A series with the values its cells have now. */
export interface Plot {
  readonly name: string;
  readonly points: readonly Point[];
}

/** Reads a cell of a sheet, by its name, and rows and columns from 0. */
export type ReadCell = (sheet: string, row: number, column: number) => CellValue;

/** The values of a range, row by row. */
export function cellsIn({ sheet, row, column, rows, columns }: CellRange, read: ReadCell): CellValue[] {
  return Array.from({ length: rows * columns }, (_, i) =>
    read(sheet, row + Math.floor(i / columns), column + (i % columns)),
  );
}

/**
 * What a chart shows: every bar by its place, but for free places below the last one, and the points that have both
 * numbers. A series named by a cell is left out while it has none.
 */
export function plotsOf({ kind, series }: Chart, read: ReadCell): Plot[] {
  const plots = seriesOf({ kind, series }, read);
  if (kind !== "bars") return plots;
  const isUsed = ({ x, y }: Point) => x !== "" || y !== null;
  const used = Math.max(0, ...plots.map(({ points }) => 1 + points.map(isUsed).lastIndexOf(true)));
  return plots.map(({ name, points }) => ({ name, points: points.slice(0, used) }));
}

function seriesOf({ kind, series }: Pick<Chart, "kind" | "series">, read: ReadCell): Plot[] {
  return series.flatMap(({ name, x, y }) => {
    const places = cellsIn(x, read);
    const points = cellsIn(y, read).flatMap((height, i): Point[] => {
      const place = places[i] ?? null;
      if (kind === "bars") return [{ x: textOf(place), y: typeof height === "number" ? height : null }];
      return typeof place === "number" && typeof height === "number" ? [{ x: place, y: height }] : [];
    });
    if (typeof name === "string") return { name, points };
    return points.length > 0 ? { name: cellsIn(name, read).map(textOf).join(" "), points } : [];
  });
}

export const textOf = (value: CellValue): string =>
  value === null ? "" : typeof value === "object" ? value.error : String(value);
