import { AT, kindOfKey, type RowKind, type SheetColumn } from "../../../src/runsheet/sheet/layout";
import type { CellValue } from "../../../src/sheet/sheet";

/** The rows of a kind on a run sheet, with the pot that each is of. */
export const keyed = (cells: CellValue[][], kind: RowKind) => {
  let pot = "";
  return cells.flatMap((row, r) => {
    const own = kindOfKey(row[AT.key]);
    if (own === "pot") pot = String(row[AT.name]);
    return own === kind ? [{ pot, row: r + 1, cells: row, at: (column: SheetColumn) => row[AT[column]] }] : [];
  });
};
