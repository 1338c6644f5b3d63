/**
 * A sheet described without a spreadsheet program: what each cell holds and how it looks. The run sheet and the
 * sample workbooks are written as such descriptions; a host adapter or the workbook writer puts them into cells.
 */

/** What a cell holds when read: exact, not as shown. A blank is null; an error comes with its code (`#N/A`). */
export type CellValue = string | number | boolean | null | { readonly error: string };

/** What the cells of a sheet hold, by row and column from 0, what formulas spill included. */
export type SheetValues = readonly (readonly CellValue[])[];

/**
 * What a cell is to hold. `text` is always text, whatever it begins with: only `formula` is ever computed.
 * A formula is in the en-US form with its `=`, whole references such as `Vessels[[#This Row],[Water]]`,
 * and `POUR.` functions by that name.
 */
export type Content = { readonly text: string } | { readonly number: number } | { readonly formula: string };

/** The few looks a sheet uses; styles.ts says what each one is. */
export type Look =
  | "body"
  | "name"
  | "title"
  | "heading"
  | "label"
  | "input"
  | "caution"
  | "total"
  | "note"
  | "blank"
  | "alert"
  | "say"
  | "mark";

export interface Cell {
  /** From 0. */
  readonly row: number;
  /** From 0. */
  readonly column: number;
  /** Nothing: an empty cell that still has its look, such as a place to write in. */
  readonly content?: Content;
  readonly look?: Look;
  /** An Excel number format in its en-US form, such as `0.0%`. */
  readonly format?: string;
  /** Columns this cell covers to its right, itself included. */
  readonly across?: number;
  readonly align?: "left" | "center" | "right";
  /** Lines that its row has room for at least: what a formula comes to say cannot be counted beforehand. */
  readonly lines?: number;
}

/** A table with its heading row; the columns' cells stand in `cells` like all others. */
export interface Table {
  /** Letters and digits, unique in the workbook. */
  readonly name: string;
  readonly row: number;
  readonly column: number;
  readonly headings: readonly string[];
  /** Rows below the heading, at least one. */
  readonly rows: number;
  readonly choices?: readonly Choices[];
}

/** What is offered in the cells of a column, where anything else may be typed too: what a column of another table knows, or some words. */
export type Choices = { readonly heading: string } & (
  | { readonly from: string; readonly column: string }
  | { readonly among: readonly string[] }
);

/** Cells of a sheet, row by row; rows and columns from 0. */
export interface CellRange {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
}

/** Points or bars that belong together. */
export interface Series {
  /** Its name, or the cell that says it: then a series without points is left out, as its row is still free. */
  readonly name: string | CellRange;
  /** The bars' names, or the points' places across. */
  readonly x: CellRange;
  /** The bars' lengths, or the points' heights. What is no number is left out. */
  readonly y: CellRange;
}

/** A picture of cells, drawn anew when they change. */
export interface Chart {
  /** `bars` lie one below the other, each with its name; `line-of-points` joins the points of each series. */
  readonly kind: "bars" | "line-of-points";
  readonly title: string;
  /** What stands along the axes of x and y; an empty text where the names say it. */
  readonly xTitle: string;
  readonly yTitle: string;
  /** The number format along the axis of y, in its en-US form. */
  readonly format: string;
  readonly series: readonly Series[];
  /** The cells it covers, on its own sheet. */
  readonly place: Omit<CellRange, "sheet">;
}

export interface Print {
  readonly paper: "letter" | "a4";
  readonly landscape?: boolean;
  /** Rows repeated on each page, from 0, both included. */
  readonly repeatRows?: readonly [number, number];
  /** Rows that begin a new page, from 0. */
  readonly newPages?: readonly number[];
  /** Whether a file says where pages end, so that blocks of rows, which empty rows part, stay whole. */
  readonly wholeBlocks?: true;
}

export interface Sheet {
  /** The name wished for; the host adds a number when it is taken. */
  readonly name: string;
  /** Widths of the columns, in characters; 0 hides a column. */
  readonly widths: readonly number[];
  readonly cells: readonly Cell[];
  /** Heights of rows in points, by row: at least so high, higher where its texts need it. Other rows have the usual one. */
  readonly heights?: Readonly<Record<number, number>>;
  readonly tables?: readonly Table[];
  readonly charts?: readonly Chart[];
  /** Rows at the top that stay in view. */
  readonly frozenRows?: number;
  readonly print?: Print;
}
