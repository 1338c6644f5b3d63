import type { Area } from "../book";
import { damaged } from "../refused";

/** Columns that all spills of a sheet may reach over together, row by row. */
const MOST_COLUMNS = 20_000_000;

/** Which cells of a sheet are filled by a formula in another cell. */
export class Spills {
  /** By column: the cell of the formula that fills it, and the last row. */
  readonly #byColumn = new Map<number, Area>();
  #columns = 0;

  /** Notes the area of a formula that no other one's area holds. */
  add(area: Area): void {
    this.#columns += area.columns;
    if (this.#columns > MOST_COLUMNS) throw damaged("Its formulas say that they fill more cells than a sheet can use.");
    if (area.rows === 1 && area.columns === 1) return;
    for (let column = area.column; column < area.column + area.columns; column++) this.#byColumn.set(column, area);
  }

  covers(row: number, column: number): boolean {
    const area = this.#byColumn.get(column);
    return (
      area !== undefined &&
      row >= area.row &&
      row < area.row + area.rows &&
      !(row === area.row && column === area.column)
    );
  }
}
