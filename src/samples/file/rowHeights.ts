import type { Sheet } from "../../sheet/sheet";
import { STYLES } from "../../sheet/styles";
import { EXCEL, LINE_SPACING, linesOf, roomIn } from "../../sheet/textLines";

/**
 * Heights, in points, of the rows (from 0) that hold large or wrapped texts, or are to have room for them. Programs fit a row when it is edited,
 * not when the file is opened, and never to merged cells.
 */
export function rowHeights({ cells, widths }: Sheet): Map<number, number> {
  const heights = new Map<number, number>();
  for (const cell of cells) {
    const { row, content, look = "body", lines: least = 1 } = cell;
    const { wrap, size = EXCEL.size } = STYLES[look];
    const text = content && "text" in content ? content.text : "";
    if (least === 1 && (text === "" || (!wrap && size === EXCEL.size))) continue;
    const lines = wrap ? linesOf(text, roomIn(cell, widths, EXCEL.width)) : 1;
    const height = Math.max(least, lines) * size * LINE_SPACING;
    heights.set(row, Math.max(heights.get(row) ?? 0, height));
  }
  return heights;
}
