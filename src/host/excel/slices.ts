import type { Cell, Sheet } from "../../sheet/sheet";
import type { Layout } from "./layOut";
import { MOST_BYTES, refuseTooMuch, rowBytes } from "./payload";

/** Rows of a sheet, from the first to before the last, and the cells in them. */
export interface Slice {
  readonly from: number;
  readonly to: number;
  readonly cells: readonly Cell[];
}

/** The contents of a slice take about so much of a request: with its looks it stays well below what Excel takes. */
const SLICE_BYTES = MOST_BYTES / 4;
/** Looks that change from cell to cell are several times as long as short contents. */
const SLICE_CELLS = 20_000;

/** All rows of a sheet, in slices. Throws where a single row is too long for a request. */
export function slicesOf({ cells }: Sheet, { rows, columns, constants, formulas }: Layout): Slice[] {
  const of: Cell[][] = Array.from({ length: rows }, () => []);
  for (const cell of cells) of[cell.row]?.push(cell);
  const ends: number[] = [];
  let bytes = 0;
  for (let row = 0; row < rows; row++) {
    const more = rowBytes(constants[row] as Row) + rowBytes(formulas?.[row] ?? []);
    refuseTooMuch(more);
    const from = ends.at(-1) ?? 0;
    if (row > from && (bytes + more > SLICE_BYTES || (row - from + 1) * columns > SLICE_CELLS)) {
      ends.push(row);
      bytes = 0;
    }
    bytes += more;
  }
  return [...ends, rows].map((to, i) => {
    const from = ends[i - 1] ?? 0;
    return { from, to, cells: of.slice(from, to).flat() };
  });
}

type Row = readonly unknown[];
