import type { Sheet } from "../../sheet/sheet";
import { STYLES } from "../../sheet/styles";

/** Points a line takes for each point of its letters, as Excel's own default row has it: 15 for 11. */
const LINE = 15 / 11;

/**
 * Heights, in points, of the rows (from 0) that hold large or wrapped texts. Programs fit a row when it is edited,
 * not when the file is opened, and never to merged cells.
 */
export function rowHeights({ cells, widths }: Sheet): Map<number, number> {
  const heights = new Map<number, number>();
  for (const { row, column, content, look = "body", across = 1 } of cells) {
    const { wrap, size = 11 } = STYLES[look];
    if (!content || !("text" in content) || (!wrap && size === 11)) continue;
    const width = widths.slice(column, column + across).reduce((sum, one) => sum + one, 0);
    const height = (wrap ? lines(content.text, width) : 1) * size * LINE;
    heights.set(row, Math.max(heights.get(row) ?? 0, height));
  }
  return heights;
}

/** The lines a text takes when it is broken between words to this many characters. */
function lines(text: string, width: number): number {
  let count = 1;
  let used = 0;
  for (const { length } of text.split(" ")) {
    if (used > 0 && used + 1 + length > width) {
      count++;
      used = length;
    } else {
      used += (used > 0 ? 1 : 0) + length;
    }
  }
  return count;
}
