import type { Cell } from "./sheet";

/** Excel's own: points of its letters, and characters of a column whose width is not given. */
export const EXCEL = { size: 11, width: 8.43 } as const;

/** Points from line to line for each point of the letters, as Excel's default row has it: 15 for 11. */
export const LINE_SPACING = 15 / 11;

/** Characters of the default size that stand beside each other in a cell, over all the columns it covers. */
export function roomIn({ column, across = 1 }: Cell, widths: readonly number[], usual: number): number {
  return Array.from({ length: across }, (_, i) => widths[column + i] ?? usual).reduce((sum, one) => sum + one, 0);
}

/** How many lines a text takes, broken between words, where one holds this many characters, at least one. */
export function linesOf(text: string, characters: number): number {
  const room = Math.max(1, characters);
  let lines = 0;
  for (const paragraph of text.split("\n")) {
    let used = 0;
    lines++;
    for (const { length } of paragraph.split(/\s+/)) {
      if (used > 0 && used + 1 + length > room) {
        lines++;
        used = 0;
      }
      used += length + (used > 0 ? 1 : 0);
      while (used > room) {
        lines++;
        used -= room;
      }
    }
  }
  return lines;
}
