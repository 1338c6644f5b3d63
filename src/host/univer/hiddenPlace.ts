import type { Worksheet } from "@univerjs/core";
import { columnLetters } from "../../sheet/columnLetters";
import type { Place } from "../host";

/** What is said when cells are gone to that cannot be seen; empty where they can. */
export function hiddenWords(sheet: Worksheet, { row, column, rows, columns }: Place): string {
  const some = (first: number, count: number, is: (index: number) => boolean) =>
    Array.from({ length: count }, (_, i) => first + i).some(is);
  if (!some(row, rows, (r) => sheet.getRowVisible(r))) {
    const what = `Row ${row + 1} is hidden`;
    return some(row, rows, (r) => sheet.getRowFiltered(r))
      ? `${what} by a filter. To see it, press the arrow in the heading that is filtered, then Clear Filter.`
      : `${what}. To see it, select the rows above and below it by their numbers, right-click, then Show hidden rows.`;
  }
  if (some(column, columns, (c) => sheet.getColVisible(c))) return "";
  return `Column ${columnLetters(column)} is hidden. To see it, select the columns beside it by their letters, right-click, then Show hidden columns.`;
}
