import { columnLetters } from "../../sheet/columnLetters";

/** A block of cells: rows and columns from 0. */
export interface Rectangle {
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
}

/** A cell and what kind it is. */
export interface Marked {
  readonly row: number;
  readonly column: number;
  readonly kind: string;
}

/**
 * Covers the cells of each kind with few rectangles, so that one command serves many cells: neighbours in a row
 * become a run, and equal runs below each other become a rectangle. Every cell is in exactly one rectangle of
 * its kind; a cell given twice counts once, as its last kind.
 */
export function rectangles(cells: Iterable<Marked>): Map<string, Rectangle[]> {
  const rows = new Map<number, Map<number, string>>();
  for (const { row, column, kind } of cells) {
    const inRow = rows.get(row) ?? new Map<number, string>();
    rows.set(row, inRow.set(column, kind));
  }

  const found = new Map<string, Rectangle[]>();
  /** The rectangles that end in the row above, by kind, first column and width. */
  let above = new Map<string, { rectangles: Rectangle[]; at: number }>();
  let rowAbove = Number.NaN;
  for (const row of [...rows.keys()].sort((a, b) => a - b)) {
    const here: typeof above = new Map();
    for (const run of runs(rows.get(row) as Map<number, string>)) {
      const key = `${run.column}:${run.columns}:${run.kind}`;
      const grown = row === rowAbove + 1 ? above.get(key) : undefined;
      if (grown) {
        const old = grown.rectangles[grown.at] as Rectangle;
        grown.rectangles[grown.at] = { ...old, rows: old.rows + 1 };
        here.set(key, grown);
      } else {
        const list = found.get(run.kind) ?? [];
        found.set(run.kind, list);
        here.set(key, { rectangles: list, at: list.length });
        list.push({ row, column: run.column, rows: 1, columns: run.columns });
      }
    }
    above = here;
    rowAbove = row;
  }
  return found;
}

/** The runs of equal neighbours in a row, from left to right. */
function runs(inRow: ReadonlyMap<number, string>): { column: number; columns: number; kind: string }[] {
  const found: { column: number; columns: number; kind: string }[] = [];
  for (const column of [...inRow.keys()].sort((a, b) => a - b)) {
    const kind = inRow.get(column) as string;
    const last = found.at(-1);
    if (last && last.kind === kind && last.column + last.columns === column) last.columns++;
    else found.push({ column, columns: 1, kind });
  }
  return found;
}

/** The smallest rectangle that holds all the cells, however many; there is at least one. */
export function spanOf(cells: readonly { readonly row: number; readonly column: number }[]): Rectangle {
  let [top, left, bottom, right] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { row, column } of cells) {
    [top, left] = [Math.min(top, row), Math.min(left, column)];
    [bottom, right] = [Math.max(bottom, row), Math.max(right, column)];
  }
  return { row: top, column: left, rows: bottom - top + 1, columns: right - left + 1 };
}

/** A rectangle's address: `B2`, `B2:C9`. */
export function address({ row, column, rows, columns }: Rectangle): string {
  const first = `${columnLetters(column)}${row + 1}`;
  return rows === 1 && columns === 1 ? first : `${first}:${columnLetters(column + columns - 1)}${row + rows}`;
}

/** Addresses joined by commas, each list short enough for Excel, which takes at most 8,192 characters at once. */
export function addressLists(addresses: readonly string[], longest = 8192): string[] {
  const lists: string[] = [];
  for (const one of addresses) {
    const last = lists.at(-1);
    if (last !== undefined && last.length + one.length < longest) lists[lists.length - 1] = `${last},${one}`;
    else lists.push(one);
  }
  return lists;
}
