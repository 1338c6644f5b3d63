/** Widths and heights that let a sheet be read. Univer fits a row to its text only after somebody edits it. */

import type { Cell, Sheet } from "../../sheet/sheet";
import { STYLES } from "../../sheet/styles";
import { LINE_SPACING, linesOf, roomIn } from "../../sheet/textLines";
import { heightPixels } from "./file/lengths";

/** Univer's own: pixels of a row, points of a font, characters of a column. */
const DEFAULT_HEIGHT = 24;
const DEFAULT_SIZE = 11;
const DEFAULT_WIDTH = 12;

/** No row is higher than this many pixels, so that the next one stays in sight. */
const HIGHEST = 400;

/** Pixels beside a single line, for fonts that are higher than Excel's. */
const MARGIN = 2;

/** Characters that the filter's button takes from a table's heading. */
const BUTTON = 5;

/** Of the characters that fit by the widths, those that do in bold: its letters are wider. */
const BOLD = 0.775;

/** The widths wished for, and no word of a table's heading broken. */
export function widthsOf({ widths, tables = [] }: Sheet): number[] {
  const roomy = [...widths];
  for (const { column, headings } of tables) {
    for (const [i, heading] of headings.entries()) {
      if (widths[column + i] === 0) continue;
      const longest = Math.max(...heading.split(/\s+/).map((word) => word.length));
      roomy[column + i] = Math.max(widths[column + i] ?? DEFAULT_WIDTH, longest + BUTTON);
    }
  }
  return Array.from(roomy, (width) => width ?? DEFAULT_WIDTH);
}

/** The height of a row in pixels, whatever its cells hold. */
export const leastHeight = ({ heights }: Sheet, row: number): number => {
  const points = heights?.[row];
  return points === undefined ? DEFAULT_HEIGHT : heightPixels(points);
};

/**
 * The height a cell's text needs, in pixels: an estimate. Its lines are as high as Excel's, which have room for Univer's
 * too: what is saved as a file takes no more pages than what Excel lays out itself.
 */
export function heightOf(cell: Cell, sheet: Sheet, widths: readonly number[]): number {
  const { content, look, row, lines: least = 1 } = cell;
  const { size = DEFAULT_SIZE, wrap = false, bold = false } = STYLES[look ?? "body"];
  const line = heightPixels(size * LINE_SPACING);
  if (!wrap || !content || !("text" in content)) return least * line;
  const whole = roomIn(cell, widths, DEFAULT_WIDTH);
  const room = sheet.tables?.some((table) => table.row === row) ? whole - BUTTON : whole;
  const lines = Math.max(least, linesOf(content.text, bold ? room * BOLD : room));
  return Math.min(HIGHEST, lines === 1 ? line + MARGIN : lines * line);
}
