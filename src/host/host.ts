import type { Addition } from "../sheet/addition";
import type { Cell, CellValue, Sheet } from "../sheet/sheet";

export type { CellValue };

/** A rectangle of cells on a sheet: rows and columns from 0. */
export interface Place {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
}

/** A table of the workbook, or a selected range whose first row is its heading. */
export interface Source {
  /** The table's name; empty for a selection. */
  readonly name: string;
  /** The whole of it, heading included. */
  readonly place: Place;
  readonly headings: readonly string[];
}

/** A source with its rows, each as long as the headings. */
export interface SourceRows extends Source {
  readonly rows: readonly (readonly CellValue[])[];
  /**
   * How many rows right below hold something in its columns and are no part of it: down to the first blank row or the
   * next table. Below the total row of a table that has one.
   */
  readonly below?: number;
  /** The rows, from 0 below the heading, that a filter hides or that were hidden by hand. */
  readonly hidden?: readonly number[];
}

/** What a read rejects with when the numbers have not come in time: stale ones are worse than none. */
export class StillCalculating extends Error {
  constructor() {
    super("The workbook is still being worked out. Wait until its numbers have come, then try again.");
  }
}

/** What the reading of settings rejects with when they cannot be understood: they are set aside, and new ones can be kept. */
export class DamagedSettings extends Error {
  constructor() {
    super(
      "The settings kept in this workbook are damaged and were set aside. The pane begins with its first ones: check them.",
    );
  }
}

/** What a spreadsheet program says beside what it was asked, in sentences. */
export interface Remarks {
  /** What a read waits for; undefined when none does. */
  readonly waiting: string | undefined;
  /** What may be wrong with what it does, or could not be done. */
  readonly doubts: readonly string[];
}

/** Watches long work, and stops it. */
export interface Work {
  readonly signal?: AbortSignal;
  /** Called with the share that is done, 0 to 1. */
  readonly onProgress?: (share: number) => void;
}

/**
 * All that the pane needs of a spreadsheet program. Every method rejects with an Error whose message a user can act on,
 * and all that read cells with StillCalculating when these are not worked out in time.
 */
export interface Host {
  /** The most formulas of a new sheet that are worked out while a user waits. Absent where there is no such limit. */
  readonly mostFormulas?: number;
  /** The tables of the workbook, in the order of its sheets. */
  tables(): Promise<Source[]>;
  /** The rows of a table, or of a range that was selected, as they are now. */
  read(source: Source): Promise<SourceRows>;
  /** The selected range with its first row as headings; rejects when it is a single cell. */
  selection(): Promise<SourceRows>;
  /** The names of the sheets, in order. */
  sheetNames(): Promise<string[]>;
  /** What stands in A1 of each sheet, in order: it tells what a sheet is, whatever its name became. */
  firstCells(): Promise<{ readonly sheet: string; readonly value: CellValue }[]>;
  /**
   * Adds a sheet and shows it; gives the name it got. Nothing that was there is overwritten, and when writing
   * fails or is stopped no sheet is left behind. Text is written as text, whatever it begins with. Its formulas may
   * still be being worked out: whoever says that all is there reads the sheet before.
   */
  addSheet(sheet: Sheet, work?: Work): Promise<string>;
  /** All cells of a sheet from A1 on, to the last that holds anything. */
  readSheet(name: string): Promise<CellValue[][]>;
  /** Whether what a cell shows is worked out by a formula of its own. */
  isFormula(sheet: string, row: number, column: number): Promise<boolean>;
  /**
   * Puts contents into cells of a sheet; their looks stay. Only for what the user was shown and pressed for, and read
   * again just before: cells may have moved or changed without a call of `onChange`.
   */
  write(sheet: string, cells: readonly Cell[]): Promise<void>;
  /**
   * Adds rows to tables, and tables that are not there yet on sheets of their own, in one step: all or nothing, also
   * when the spreadsheet program fails half-way. Rows go below the last one of a table that holds anything, above its
   * total row; columns that are not named stay blank or take their formula. Rejects when a heading is missing. What
   * stands below a table is never overwritten: it is moved down, or else the call rejects. The sheet that is shown stays.
   */
  append(additions: readonly Addition[]): Promise<void>;
  /**
   * Lets a table grow over so many of the rows right below it. Blank cells of a column that has formulas take the
   * formula of the table's last row; what stands in the others stays. Rejects when so many rows are not there any more.
   */
  takeInRows(table: string, rows: number): Promise<void>;
  /** The name of the sheet that is shown. */
  activeSheet(): Promise<string>;
  /** Selects a cell, so that the user sees it. */
  select(place: Place): Promise<void>;
  /**
   * The settings kept in the workbook, or null when none are. Those that cannot be understood it sets aside, within the
   * workbook, and rejects with DamagedSettings: the next time there are none.
   */
  settings(): Promise<unknown>;
  /** Keeps settings (plain JSON) in the workbook. */
  keepSettings(settings: unknown): Promise<void>;
  /** Prints a sheet, or saves it as PDF through the browser's own dialog. Absent where the spreadsheet program prints itself. */
  print?(sheet: string): Promise<void>;
  /** Calls back after tables may have changed (sheets or cells edited) or another sheet is shown; gives the way to stop that. */
  onChange(callback: () => void): () => void;
  /**
   * Calls back with what there is to say, at once and whenever it changes; gives the way to stop that. Absent where there
   * never is anything.
   */
  onRemarks?(callback: (remarks: Remarks) => void): () => void;
}
