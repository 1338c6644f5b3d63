import type { Cell, CellValue } from "../../sheet/sheet";

export interface Size {
  readonly rows: number;
  readonly columns: number;
}

/**
 * How far a formula's answer spills: to the last computed value right of it and below, before the next cell that
 * holds something of its own. So nothing else may spill into the row or the column of a formula that spills.
 */
export function spillSize(
  { row, column }: Cell,
  cells: readonly Cell[],
  values: readonly (readonly CellValue[])[],
): Size {
  const own = new Set(cells.filter(({ content }) => content).map((cell) => `${cell.row} ${cell.column}`));
  const reach = (down: 0 | 1, right: 0 | 1): number => {
    const end = down ? values.length - row : (values[row]?.length ?? 0) - column;
    let size = 1;
    for (let i = 1; i < end && !own.has(`${row + i * down} ${column + i * right}`); i++) {
      if ((values[row + i * down]?.[column + i * right] ?? null) !== null) size = i + 1;
    }
    return size;
  };
  return { rows: reach(1, 0), columns: reach(0, 1) };
}
