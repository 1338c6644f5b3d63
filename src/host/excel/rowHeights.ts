import type { Sheet } from "../../sheet/sheet";
import { STYLES } from "../../sheet/styles";
import { EXCEL, LINE_SPACING, linesOf, roomIn } from "../../sheet/textLines";

/** Excel's tallest row, in points. */
const TALLEST = 409;
/** Characters that a line really holds of those the width promises: words do not break just at the edge. */
const FILLED = 0.9;
/** Names are short, and of letters, which are narrower than the digits by which columns are measured. */
const FILLED_BY_NAMES = 1;

/**
 * Heights in points of the rows that need saying: Excel fits a row to its wrapped text by itself, but not to
 * text that runs across several columns. The estimate errs to the tall side, so that nothing is cut in print.
 */
export function rowHeights(sheet: Sheet): Map<number, number> {
  const heights = new Map<number, number>();
  const mustSay = new Set<number>();
  for (const cell of sheet.cells) {
    const { row, content, look = "body", across = 1, lines: least = 1 } = cell;
    const { wrap, size = EXCEL.size, bold } = STYLES[look];
    const text = content && "text" in content ? content.text : "";
    if (least === 1 && (!wrap || text === "")) continue;
    const filled = look === "name" ? FILLED_BY_NAMES : FILLED;
    const room = (roomIn(cell, sheet.widths, EXCEL.width) * filled * EXCEL.size) / size / (bold ? 1.1 : 1);
    const lines = Math.max(least, linesOf(text, room));
    const height = Math.min(TALLEST, lines * size * LINE_SPACING);
    heights.set(row, Math.max(height, heights.get(row) ?? 0));
    if ((across > 1 || least > 1) && lines > 1) mustSay.add(row);
  }
  for (const [row, least] of Object.entries(sheet.heights ?? {})) {
    heights.set(Number(row), Math.max(least, heights.get(Number(row)) ?? 0));
    mustSay.add(Number(row));
  }
  return new Map([...heights].filter(([row]) => mustSay.has(row)));
}
