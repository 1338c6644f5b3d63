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
  const lineAt = new Map(now);
  const places = new Map<string, number[]>();
  for (const [place, line] of [...now].sort(([a], [b]) => a - b)) {
    const known = places.get(line);
    if (known) known.push(place);
    else places.set(line, [place]);
  }
  const differing = before.filter(([place, line]) => lineAt.get(place) !== line);
  const votes = new Map<number, number>();
  for (const [place, line] of differing) {
    for (const other of nearest(places.get(line) ?? [], place)) {
      votes.set(other - place, (votes.get(other - place) ?? 0) + 1);
    }
  }
  const most = [...votes.values()].reduce((a, b) => Math.max(a, b), 0);
  return most * 2 > differing.length;
}

/** Of a line that stands in very many places only those near its old one are looked at, so many to each side. */
const NEAR = 50;

function nearest(places: readonly number[], place: number): readonly number[] {
  let [low, high] = [0, places.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((places[middle] as number) < place) low = middle + 1;
    else high = middle;
  }
  return places.slice(Math.max(0, low - NEAR), low + NEAR);
}
