/** The rows of a sheet with their cells, what formulas fill included. */

import type { ICellData, IRange, IRowData, IWorksheetData } from "@univerjs/core";
import type { BookCell, BookRow } from "../../../file/book";
import type { CellValue } from "../../../sheet/sheet";
import { asideOf, cellOf, cellValue } from "./cellData";
import { NO, YES } from "./codes";
import { heightOf, heightPixels, LengthMemory } from "./lengths";
import type { Context } from "./sheetOf";

type Line<T> = Readonly<Record<number, T | null | undefined>>;

const numbersOf = (data: object | undefined): number[] => Object.keys(data ?? {}).map(Number);

export function rowsOf(
  sheet: Partial<IWorksheetData>,
  filtered: ReadonlySet<number>,
  context: Context,
): readonly BookRow[] {
  const heights = new LengthMemory();
  for (const { row, height } of context.original?.rows ?? []) {
    if (height !== undefined) heights.note(row, height, heightPixels(height));
  }
  const originals = new Map(context.original?.rows.map((one) => [one.row, one]));
  const { filled } = context.worked;
  const numbers = new Set([
    ...numbersOf(sheet.cellData),
    ...numbersOf(sheet.rowData),
    ...numbersOf(filled),
    ...filtered,
  ]);
  return [...numbers]
    .sort((a, b) => a - b)
    .flatMap((row) => {
      const said = sheet.rowData?.[row];
      const style = context.styles.of(said?.s);
      const height = heightNow(said, row, heights);
      const made: BookRow = {
        row,
        ...(height !== undefined && { height }),
        ...((filtered.has(row) || said?.hd === YES) && { hidden: true }),
        ...(style !== 0 && { style }),
        cells: cellsOf(sheet, row, originals.get(row), context),
      };
      return made.cells.length > 0 || Object.keys(made).length > 2 ? [made] : [];
    });
}

/** None of a row whose height follows its text. */
function heightNow(said: Partial<IRowData> | undefined, row: number, heights: LengthMemory): number | undefined {
  if (said?.h === undefined || (said.ia !== NO && said.ah !== undefined)) return undefined;
  return heights.at(row, said.h) ?? heightOf(said.h);
}

function cellsOf(
  sheet: Partial<IWorksheetData>,
  row: number,
  original: BookRow | undefined,
  context: Context,
): BookCell[] {
  const { tables, styles, memory, worked } = context;
  const own = (sheet.cellData?.[row] ?? {}) as Line<ICellData>;
  const filled = worked.filled[row] ?? {};
  const covered = worked.covered[row] ?? {};
  const before = (context.before?.data.cellData?.[row] ?? {}) as Line<ICellData>;
  const columns = [...new Set([...numbersOf(own), ...numbersOf(filled)])].sort((a, b) => a - b);
  const settled = settledBy(original);
  return columns.flatMap((column) => {
    const data = own[column] ?? {};
    const sharedFormula = () => worked.shared[row]?.[column] ?? undefined;
    const place = { sheet: sheet.name ?? "", row, column };
    const cell = cellOf(data, place, {
      tables,
      styles,
      memory,
      sharedFormula,
      styleBefore: before[column]?.s,
    });
    if (cell?.formula) {
      return [withSpill({ ...cell, value: settled(column, cell.value) }, data, covered[column])];
    }
    const inside = filled[column];
    // Something that stands in the way of a formula is there itself.
    if (!inside || (cell && cell.value !== null)) return cell ? [cell] : [];
    return [{ column, value: settled(column, cellValue(inside)), spilled: true as const, style: cell?.style ?? 0 }];
  });
}

/** What the last digits of a number may differ by, as programs add up in orders of their own. */
const SAME = 1e-12;

/** The number of the file where the one worked out is the same but for its last digits: nothing changed then. */
function settledBy(original: BookRow | undefined): (column: number, value: CellValue) => CellValue {
  let cells: Map<number, CellValue> | undefined;
  return (column, value) => {
    if (typeof value !== "number" || !original) return value;
    cells ??= new Map(original.cells.map((cell) => [cell.column, cell.value]));
    const before = cells.get(column);
    return typeof before === "number" && Math.abs(value - before) <= SAME * Math.abs(before) ? before : value;
  };
}

/** An array of the older kind covers what it was entered over, a younger one what it came to fill. */
function withSpill(cell: BookCell, data: ICellData, range: IRange | null | undefined): BookCell {
  const before = asideOf(data).spill;
  if (before && !before.dynamic) return cell;
  const rows = range ? range.endRow - range.startRow + 1 : 1;
  const columns = range ? range.endColumn - range.startColumn + 1 : 1;
  if (rows * columns > 1) return { ...cell, spill: { rows, columns, dynamic: true } };
  return before ? { ...cell, spill: { rows: 1, columns: 1, dynamic: true } } : cell;
}
