import type { CellValue, Place, SourceRows } from "../host";
import { rowsBelow } from "../rowsBelow";

/** What is loaded of a range to know where it is. */
export const WHERE = "rowIndex,columnIndex,rowCount,columnCount,worksheet/name";

export const placeOf = (range: Excel.Range): Place => ({
  sheet: range.worksheet.name,
  row: range.rowIndex,
  column: range.columnIndex,
  rows: range.rowCount,
  columns: range.columnCount,
});

/**
 * Asks for what stands below a block and which of its rows are hidden, in the sync that the caller makes. What is given
 * back answers after that one; it makes another only where rows are hidden, or where one below may be another table's.
 * @param block heading and total row included
 */
export function askAround(
  context: Excel.RequestContext,
  block: Excel.Range,
): () => Promise<Required<Pick<SourceRows, "below" | "hidden">>> {
  const { worksheet } = block;
  block.load(`rowHidden,${WHERE}`);
  // From the block's last row to the last one of the sheet with something in it: there always is such a rectangle.
  const tail = block
    .getLastRow()
    .getBoundingRect(worksheet.getUsedRange(true).getLastRow())
    .getIntersection(block.getEntireColumn())
    .load("rowIndex,values");
  const tables = worksheet.tables.load("items/name");
  return async () => {
    const place = placeOf(block);
    const rowAt = (row: number) =>
      tail.values[row - tail.rowIndex]?.map((value): CellValue => (value === "" ? null : value));
    const isAnyHidden = block.rowHidden !== false;
    const isAnyBelow = rowsBelow(place, [], rowAt) > 0;
    if (!isAnyHidden && !isAnyBelow) return { below: 0, hidden: [] };
    const ranges = isAnyBelow ? tables.items.map((table) => table.getRange().load(WHERE)) : [];
    const rows = isAnyHidden ? block.getRowProperties({ rowHidden: true }) : undefined;
    await context.sync();
    return {
      below: rowsBelow(place, ranges.map(placeOf), rowAt),
      hidden: (rows?.value ?? []).slice(1).flatMap(({ rowHidden }, row) => (rowHidden ? [row] : [])),
    };
  };
}
