import { keptNumber } from "../../core/check/keptNumber";
import { plain } from "../../core/check/plain";
import { calendarDay } from "../../core/label/calendarDay";
import { dayOfIso } from "../../core/label/isoDay";
import type { CellValue } from "../../sheet/sheet";
import { bracketed } from "./headings/tidyHeading";
import { RowNotes } from "./rowNotes";
import type { TableReader } from "./tableReader";
import { takenForDay } from "./takenForDay";
import { textForNumber } from "./textForNumber";

/** Reads the cells of one row by field and gathers what is wrong with them. */
export class RowReader<F extends string> extends RowNotes<F> {
  constructor(
    private readonly cells: TableReader<F>,
    row: number,
  ) {
    super(cells.id, row, (field) => cells.nameOf(field));
  }

  isBlank(field: F): boolean {
    const cell = this.cells.cell(this.row, field);
    return cell === null || (typeof cell === "string" && cell.trim() === "");
  }

  /** The number in a cell; undefined when it is blank, or wrong and noted. */
  number(field: F): number | undefined {
    const cell = this.cells.cell(this.row, field);
    if (typeof cell === "number") return this.check(field, () => keptNumber("", cell));
    if (this.isBlank(field) || this.isError(field, cell)) return undefined;
    this.error(field, textForNumber(String(cell).trim(), this.cells.wanted(field)));
    return undefined;
  }

  /** The text in a cell, without the spaces around it; empty when it is blank, or an error and noted. */
  text(field: F): string {
    const cell = this.cells.cell(this.row, field);
    if (cell === null || this.isError(field, cell)) return "";
    // A lot or a code of many digits keeps them all.
    return typeof cell === "number" && !Number.isInteger(cell) ? plain(cell) : String(cell).trim();
  }

  /** The day that a lot in a cell became, where the spreadsheet took it for one. */
  takenForDay(field: F): number | undefined {
    return takenForDay(this.cells.cell(this.row, field));
  }

  /** The day in a cell, as spreadsheets count days; undefined when it is blank, or wrong and noted. */
  date(field: F): number | undefined {
    const cell = this.cells.cell(this.row, field);
    if (this.isBlank(field) || this.isError(field, cell)) return undefined;
    const serial = typeof cell === "number" ? cell : dayOfIso(String(cell).trim());
    if (serial === undefined) {
      this.error(field, `"${String(cell).trim().slice(0, 40)}" is not a date; write one such as 2026-11-26`);
      return undefined;
    }
    const day = Math.floor(serial);
    return this.check(field, () => calendarDay(day)) && day;
  }

  /** What stands in brackets in the heading of a field, as a rule its unit: `C` of `Pour at (C)`; empty when none. */
  unit(field: F): string {
    return bracketed(this.cells.heading(field))[0] ?? "";
  }

  /** The code of the error that a cell shows, such as `#N/A`; empty when it shows none. */
  errorCode(field: F): string {
    const cell = this.cells.cell(this.row, field);
    return typeof cell === "object" && cell !== null ? cell.error : "";
  }

  private isError(field: F, cell: CellValue): boolean {
    if (cell === null || typeof cell !== "object") return false;
    this.error(field, `the cell shows ${cell.error}; fix it first`);
    return true;
  }
}
