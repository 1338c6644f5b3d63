import type { Sheet } from "../../sheet/sheet";
import { STYLES } from "../../sheet/styles";
import { EXCEL, LINE_SPACING, linesOf, roomIn } from "../../sheet/textLines";

/**
 * Heights, in points, of the rows (from 0) that hold large or wrapped texts. Programs fit a row when it is edited,
 * not when the file is opened, and never to merged cells.
 */
export function rowHeights({ cells, widths }: Sheet): Map<number, number> {
  const heights = new Map<number, number>();
  for (const cell of cells) {
    const { row, content, look = "body" } = cell;
    const { wrap, size = EXCEL.size } = STYLES[look];
    if (!content || !("text" in content) || (!wrap && size === EXCEL.size)) continue;
    const lines = wrap ? linesOf(content.text, roomIn(cell, widths, EXCEL.width)) : 1;
    const height = lines * size * LINE_SPACING;
    heights.set(row, Math.max(heights.get(row) ?? 0, height));
  }
  return heights;
}
