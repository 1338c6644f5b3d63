import type { Sheet } from "../../sheet/sheet";
import { STYLES } from "../../sheet/styles";

/** Excel's tallest row, in points. */
const TALLEST = 409;
/** Size of Excel's default font and the height of its line, in points. */
const SIZE = 11;
const LINE = 15;
/** Characters that a line really holds of those the width promises: words do not break just at the edge. */
const FILLED = 0.9;
const DEFAULT_WIDTH = 8.43;

/**
 * Heights in points of the rows that need saying: Excel fits a row to its wrapped text by itself, but not to
 * text that runs across several columns. The estimate errs to the tall side, so that nothing is cut in print.
 */
export function rowHeights(sheet: Sheet): Map<number, number> {
  const heights = new Map<number, number>();
  const mustSay = new Set<number>();
  for (const { row, column, content, look = "body", across = 1 } of sheet.cells) {
    const { wrap, size = SIZE, bold } = STYLES[look];
    if (!wrap || !content || !("text" in content)) continue;
    const width = Array.from({ length: across }, (_, i) => sheet.widths[column + i] ?? DEFAULT_WIDTH);
    const perLine = (width.reduce((sum, one) => sum + one, 0) * FILLED * SIZE) / size / (bold ? 1.1 : 1);
    const lines = content.text
      .split("\n")
      .reduce((sum, part) => sum + Math.max(1, Math.ceil(part.length / perLine)), 0);
    const height = Math.min(TALLEST, (lines * LINE * size) / SIZE);
    heights.set(row, Math.max(height, heights.get(row) ?? 0));
    if (across > 1 && lines > 1) mustSay.add(row);
  }
  return new Map([...heights].filter(([row]) => mustSay.has(row)));
}
