import { isKept } from "../../core/check/keptNumber";
import type { CellValue } from "../../sheet/sheet";
import { type Columns, kindOfKey, type RowKind, type SheetColumn } from "../sheet/layout";
import { takenForDay } from "../tables/takenForDay";

/** Numbers that may stand in a cell, and the words for one. */
interface Wanted {
  readonly words: string;
  readonly isFit: (value: number) => boolean;
}
export const AT_LEAST_0: Wanted = { words: "number of 0 or more", isFit: (value) => value >= 0 };
export const ABOVE_0: Wanted = { words: "number above 0", isFit: (value) => value > 0 };
export const WHOLE: Wanted = { words: "whole number", isFit: (value) => value >= 0 && Number.isInteger(value) };

const isFit = (cell: CellValue, wanted: Wanted): cell is number =>
  typeof cell === "number" && isKept(cell) && wanted.isFit(cell);
/** What a cell that is not fit holds. */
const besides = (cell: CellValue, { words }: Wanted): string =>
  typeof cell === "number" && !isKept(cell) ? "too large" : `no ${words}`;

/** A row of a run sheet as it is now. */
export class SheetRow {
  /** What is written in it and cannot be. */
  readonly wrong: string[] = [];
  /** Of it what the plan cannot do without. */
  readonly unplanned: string[] = [];

  constructor(
    private readonly cells: readonly CellValue[],
    /** From 1. */
    readonly row: number,
    private readonly at: Columns,
  ) {}

  /** What it holds, by its key; undefined for a row that a maker put in between. */
  get kind(): RowKind | undefined {
    return kindOfKey(this.cells[this.at.key]);
  }

  get label(): string {
    return shown(this.cells[this.at.name] ?? null);
  }

  /** The same where it names something: an error there is noted. */
  named(name: string): string {
    const cell = this.cells[this.at.name] ?? null;
    if (isErrorValue(cell)) this.unplanned.push(this.note(name, `the cell shows ${cell.error}; write the name again`));
    return this.label;
  }

  text(column: SheetColumn): string {
    const cell = this.cells[this.at[column]];
    return typeof cell === "string" ? cell.trim() : "";
  }

  /** A text that a maker may also have typed as a number. */
  words(column: SheetColumn): string {
    return shown(this.cells[this.at[column]] ?? null);
  }

  /** The day that a lot became, where the spreadsheet took it for one. */
  takenForDay(column: SheetColumn): number | undefined {
    return takenForDay(this.cells[this.at[column]] ?? null);
  }

  /** A time of the day, which a spreadsheet keeps as a share of one, or what else stands there. */
  time(column: SheetColumn): string {
    const number = this.number(column);
    if (number === undefined || number < 0 || number >= 1) return this.words(column).trim();
    const minutes = Math.round(number * 24 * 60);
    return `${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, "0")}`;
  }

  number(column: SheetColumn): number | undefined {
    const cell = this.cells[this.at[column]];
    return typeof cell === "number" && isKept(cell) ? cell : undefined;
  }

  /** The number in a cell that may be blank; what else stands there and is not fit is noted. */
  optional(column: SheetColumn, name: string, wanted: Wanted): number | undefined {
    const cell = this.cells[this.at[column]] ?? null;
    if (isBlank(cell)) return undefined;
    if (isFit(cell, wanted)) return cell;
    this.note(name, `${quoted(cell)} is ${besides(cell, wanted)}; fix it or clear it`);
    return undefined;
  }

  /** The number in a cell of the plan, without which nothing can be said of the row: 0 where it is noted as wrong. */
  needed(column: SheetColumn, name: string, wanted: Wanted): number {
    const cell = this.cells[this.at[column]] ?? null;
    if (isFit(cell, wanted)) return cell;
    this.unplanned.push(
      this.note(name, `${isBlank(cell) ? "blank" : quoted(cell)} is ${besides(cell, wanted)}; fix it`),
    );
    return 0;
  }

  note(name: string, text: string): string {
    const said = `Row ${this.row}, ${name}: ${text}`;
    this.wrong.push(said);
    return said;
  }
}

const isBlank = (cell: CellValue): boolean => cell === null || (typeof cell === "string" && cell.trim() === "");
const isErrorValue = (cell: CellValue) => typeof cell === "object" && cell !== null;
const shown = (cell: CellValue): string => (isErrorValue(cell) ? cell.error : String(cell ?? ""));
const quoted = (cell: CellValue): string => `"${shown(cell).slice(0, 40)}"`;
