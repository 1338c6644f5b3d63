/** Heights of rows for which a file says none: they follow their texts, which Univer measures only after an edit. */

import type { BookCell, BookRow, BookSheet, CellStyle } from "../../../file/book";
import { PLAIN_STYLE } from "../../../file/emptyBook";
import { EXCEL, LINE_SPACING, linesOf, roomIn } from "../../../sheet/textLines";
import { heightPixels } from "./lengths";

/** Pixels: no row that follows its text is higher. */
const HIGHEST = 400;

/** Room above and below a text of several lines, in pixels. */
const MARGIN = 4;

/** Pixels that Univer needs for a cell with a list to choose from, or it cuts the text. */
const WITH_LIST = 24;

/** Letters of a bold text are this much wider. */
const BOLD = 0.9;

/** The height in pixels that a row's texts need; nothing where the usual height does. */
export function fittedHeights(
  { columns, merges, validations, defaultWidth }: BookSheet,
  styles: readonly CellStyle[],
): (row: BookRow, usual: number) => number | undefined {
  const widths: number[] = [];
  for (const { first, last, width, hidden } of columns) {
    if (width === undefined && !hidden) continue;
    for (let column = first; column <= last; column++) widths[column] = hidden ? 0 : (width as number);
  }
  // How many columns a cell covers; nothing for one that covers rows, which no program fits.
  const merged = new Map(
    merges.map(({ row, column, rows, columns: across }) => [`${row},${column}`, rows > 1 ? 0 : across]),
  );
  const need = (cell: BookCell, row: number): number => {
    const { font, align } = styles[cell.style] ?? PLAIN_STYLE;
    if (cell.value === null || align.rotation) return 0;
    const size = Math.max(font.size, ...(cell.runs ?? []).map((run) => run.font.size ?? 0));
    if (!align.wrap && size <= EXCEL.size) return 0;
    const across = merged.get(`${row},${cell.column}`) ?? 1;
    if (across === 0) return 0;
    const line = heightPixels(size * LINE_SPACING);
    if (!align.wrap || typeof cell.value !== "string") return line;
    const place = { row, column: cell.column, across };
    const room = roomIn(place, widths, defaultWidth ?? EXCEL.width) * (EXCEL.size / size) * (font.bold ? BOLD : 1);
    const lines = linesOf(cell.value, room);
    return lines > 1 ? lines * line + MARGIN : line;
  };
  const lists = validations.filter(({ kind }) => kind === "list").flatMap(({ areas }) => areas);
  return ({ row, cells }, usual) => {
    const beside = lists.filter((area) => row >= area.row && row < area.row + area.rows);
    const isListed = ({ column, value }: BookCell) =>
      value !== null && beside.some((area) => column >= area.column && column < area.column + area.columns);
    const least = cells.some(isListed) ? WITH_LIST : 0;
    const height = cells.reduce((most, cell) => Math.max(most, need(cell, row)), least);
    return height > usual ? Math.min(HIGHEST, height) : undefined;
  };
}
