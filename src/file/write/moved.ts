import type { BookCell, BookSheet } from "../book";

type Line = readonly [number, string];

/**
 * Whether cells of a sheet stand in other rows or columns than they did, as after rows were put in: most of the lines
 * that differ are there again, all moved by as much.
 */
export const cellsMoved = (before: BookSheet, now: BookSheet): boolean =>
  linesMoved(byRow(before), byRow(now)) || linesMoved(byColumn(before), byColumn(now));

const said = ({ value, formula }: BookCell): string =>
  formula === undefined ? JSON.stringify(value) : `=${formula.replace(/\d+|[A-Z]{1,3}(?=\d)/g, "")}`;

const isSaid = ({ value, formula }: BookCell): boolean => value !== null || formula !== undefined;

const byRow = ({ rows }: BookSheet): Line[] =>
  rows.flatMap(({ row, cells }): Line[] => {
    const line = cells.filter(isSaid).map((cell) => `${cell.column} ${said(cell)}`);
    return line.length === 0 ? [] : [[row, line.join()]];
  });

function byColumn({ rows }: BookSheet): Line[] {
  const columns = new Map<number, string[]>();
  for (const { row, cells } of rows) {
    for (const cell of cells.filter(isSaid)) {
      const line = columns.get(cell.column) ?? [];
      line.push(`${row} ${said(cell)}`);
      columns.set(cell.column, line);
    }
  }
  return [...columns].map(([column, line]) => [column, line.join()]);
}

function linesMoved(before: readonly Line[], now: readonly Line[]): boolean {
  const places = new Map<string, number[]>();
  for (const [place, line] of now) places.set(line, [...(places.get(line) ?? []), place]);
  const differing = before.filter(([place, line]) => !places.get(line)?.includes(place));
  const votes = new Map<number, number>();
  for (const [place, line] of differing) {
    for (const other of places.get(line) ?? []) votes.set(other - place, (votes.get(other - place) ?? 0) + 1);
  }
  return Math.max(0, ...votes.values()) * 2 > differing.length;
}
