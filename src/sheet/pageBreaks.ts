import { MARGINS, PAPER_SIZES } from "./paper";
import type { Print, Sheet } from "./sheet";

/** Points of a millimetre, and of a pixel. */
const POINTS = 72 / 25.4;
const PIXEL = 72 / 96;

/** Of a page that is reckoned to be full: programs round the height of each row to their own dots. */
const FULL = 0.99;

/** More pages than this take no breaks: Excel knows no more of them in a sheet. */
const MOST_BREAKS = 1023;

/** How a sheet is put on its pages by a program that fits its width and is told where pages end. */
export interface Pages {
  /** Per cent, whole, at most 100, with which the width fits the paper. */
  readonly scale: number;
  /** Rows that begin a new page, from 0. */
  readonly breaks: readonly number[];
}

/** What of a sheet decides on its pages. */
export interface PagedRows {
  readonly print: Print | undefined;
  /** Of all columns that show, in pixels. */
  readonly width: number;
  /** Rows that hold anything, in order. */
  readonly filled: readonly number[];
  /** In points. */
  readonly heightOf: (row: number) => number;
}

/** @param heights of the rows in points */
export function pagesOf(sheet: Sheet, heights: ReadonlyMap<number, number>, usualHeight: number): Pages {
  return pagesOfRows({
    print: sheet.print,
    // Seven pixels for each character and five beside them.
    width: sheet.widths.reduce((sum, one) => sum + (one === 0 ? 0 : 7 * one + 5), 0),
    filled: [...new Set(sheet.cells.map(({ row }) => row))].sort((a, b) => a - b),
    heightOf: (row) => heights.get(row) ?? usualHeight,
  });
}

/** Blocks of rows, which empty rows part, stay whole on their page as far as they fit on one. */
export function pagesOfRows({ print, width, filled, heightOf }: PagedRows): Pages {
  const { paper = "a4", landscape = false, repeatRows, newPages = [] } = print ?? {};
  const [short, long] = PAPER_SIZES[paper];
  const [across, up] = landscape ? [long, short] : [short, long];
  const room = { across: (across - 2 * MARGINS.side) * POINTS, up: (up - MARGINS.top - MARGINS.bottom) * POINTS };
  const scale = Math.min(100, Math.floor((100 * room.across) / (width * PIXEL)));
  const heightFrom = (first: number, end: number) => {
    let height = 0;
    for (let row = first; row < end; row++) height += heightOf(row);
    return height;
  };
  const page = (FULL * room.up * 100) / scale;
  const repeated = repeatRows ? heightFrom(repeatRows[0], repeatRows[1] + 1) : 0;
  const begins = new Set(newPages);
  const breaks: number[] = [];
  let used = 0;
  for (const [first, end] of blocksOf(filled, newPages)) {
    const height = heightFrom(first, end);
    const left = page - (breaks.length > 0 ? repeated : 0) - used;
    if ((first > 0 && begins.has(first)) || (used > 0 && height > left && height <= page - repeated)) {
      breaks.push(first);
      used = height;
    } else used = (used + height) % page;
  }
  return { scale, breaks: breaks.slice(0, MOST_BREAKS) };
}

/**
 * The rows of each block, with the empty ones behind it, from its first to that of the next. A row that begins a page
 * begins a block.
 */
function blocksOf(filled: readonly number[], newPages: readonly number[]): [first: number, end: number][] {
  const end = (filled.at(-1) ?? -1) + 1;
  const begun = filled.filter((row, i) => i > 0 && filled[i - 1] !== row - 1);
  const starts = [...new Set([0, ...begun, ...newPages.filter((row) => row < end)])].sort((a, b) => a - b);
  return starts.map((first, i) => [first, starts[i + 1] ?? end]);
}
