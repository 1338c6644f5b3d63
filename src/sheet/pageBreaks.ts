import { MARGINS, PAPER_SIZES } from "./paper";
import type { Sheet } from "./sheet";

/** Points of a millimetre, and of a pixel. */
const POINTS = 72 / 25.4;
const PIXEL = 72 / 96;

/** How a sheet is put on its pages where a program is told a scale and breaks, and finds neither by itself. */
export interface Pages {
  /** Per cent, whole, at most 100: the width fits the paper. */
  readonly scale: number;
  /** Rows that begin a new page, from 0. */
  readonly breaks: readonly number[];
}

/**
 * Blocks of rows, which empty rows part, stay whole on their page as far as they fit on one.
 * @param heights of the rows in points
 */
export function pagesOf(sheet: Sheet, heights: ReadonlyMap<number, number>, usualHeight: number): Pages {
  const { paper = "a4", landscape = false, repeatRows, newPages = [] } = sheet.print ?? {};
  const [short, long] = PAPER_SIZES[paper];
  const [across, up] = landscape ? [long, short] : [short, long];
  // Seven pixels for each character and five beside them.
  const width = sheet.widths.reduce((sum, one) => sum + (one === 0 ? 0 : (7 * one + 5) * PIXEL), 0);
  const scale = Math.min(100, Math.floor((100 * (across - 2 * MARGINS.side) * POINTS) / width));
  const heightOf = (row: number) => heights.get(row) ?? usualHeight;
  const heightFrom = (first: number, end: number) => {
    let height = 0;
    for (let row = first; row < end; row++) height += heightOf(row);
    return height;
  };
  const room = ((up - MARGINS.top - MARGINS.bottom) * POINTS * 100) / scale;
  const repeated = repeatRows ? heightFrom(repeatRows[0], repeatRows[1] + 1) : 0;
  const breaks: number[] = [];
  let used = 0;
  for (const [first, end] of blocksOf(sheet)) {
    const height = heightFrom(first, end);
    const left = room - (breaks.length > 0 ? repeated : 0) - used;
    if (newPages.includes(first) || (used > 0 && height > left && height <= room - repeated)) {
      breaks.push(first);
      used = height;
    } else used = (used + height) % room;
  }
  return { scale, breaks };
}

/** The rows of each block, with the empty ones behind it, from its first to that of the next. */
function blocksOf({ cells }: Sheet): [first: number, end: number][] {
  const filled = new Set(cells.map(({ row }) => row));
  const end = cells.reduce((last, { row }) => Math.max(last, row + 1), 0);
  const starts = [...filled].filter((row) => row === 0 || !filled.has(row - 1)).sort((a, b) => a - b);
  return starts.map((first, i) => [i === 0 ? 0 : first, starts[i + 1] ?? end]);
}
