/** Room for the headings of tables in columns for which a file says no width: a filter's button stands over each. */

import type { BookSheet, CellStyle } from "../../../file/book";
import { widthPixels } from "./lengths";

/** Characters that the button takes. */
const BUTTON = 5;

/** Letters of a heading are bold, and this much wider. */
const BOLD = 1.1;

/** Characters: a heading that is longer is cut, or one column would fill the page. */
const MOST = 30;

/** The pixels that columns need for their headings. */
export function headingRoom({ tables, rows }: BookSheet, styles: readonly CellStyle[]): ReadonlyMap<number, number> {
  const room = new Map<number, number>();
  for (const { area, columns, hasHeadings } of tables) {
    if (!hasHeadings) continue;
    const cells = rows.find(({ row }) => row === area.row)?.cells ?? [];
    for (const [i, { heading }] of columns.entries()) {
      const column = area.column + i;
      const wraps = styles[cells.find((cell) => cell.column === column)?.style ?? 0]?.align.wrap;
      const lines = heading.split(wraps ? /\s+/ : "\n");
      const longest = Math.min(MOST, Math.max(...lines.map(({ length }) => length)) * BOLD + BUTTON);
      room.set(column, Math.max(room.get(column) ?? 0, widthPixels(longest)));
    }
  }
  return room;
}
