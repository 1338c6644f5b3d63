/**
 * A workbook as its file holds it, in plain data that passes between threads. The reader makes one from a file, the
 * embedded sheet opens it and gives it back, the writer puts what differs into the file that it came from.
 * Rows and columns count from 0; lengths are points; colours are six hex digits, themes and tints resolved.
 */

import type { CellValue, Print } from "../sheet/sheet";

export interface Book {
  /** In the order of their tabs. */
  readonly sheets: readonly BookSheet[];
  /** How cells look, by the number that cells carry. Those of a file keep the file's numbers; new ones follow. */
  readonly styles: readonly CellStyle[];
  readonly names: readonly DefinedName[];
  /** The sheet that is shown, by its place in `sheets`. */
  readonly active: number;
  /** Whether the file counted its days from 1904. The values here count from 1900, as all of ours do. */
  readonly from1904: boolean;
  /** Settings that the pane keeps in the workbook, by key: texts. */
  readonly settings: Readonly<Record<string, string>>;
}

export interface BookSheet {
  /**
   * Names the sheet for good, whatever it is called: `sheetId` of the file as a text. One that the file did not have
   * yet has any other text.
   */
  readonly id: string;
  /** Of a duplicate, the id of the sheet of the file that it was made from: it begins as that one stands there. */
  readonly copyOf?: string;
  readonly name: string;
  readonly state: "visible" | "hidden" | "veryHidden";
  /** Only those that hold or look like something, in order. */
  readonly rows: readonly BookRow[];
  readonly columns: readonly ColumnRange[];
  readonly merges: readonly Area[];
  readonly frozen: { readonly rows: number; readonly columns: number };
  readonly tables: readonly BookTable[];
  /** A filter of the sheet itself, outside of tables. */
  readonly filter: Filter | null;
  readonly validations: readonly Validation[];
  readonly conditions: readonly Condition[];
  readonly notes: readonly Note[];
  readonly links: readonly Link[];
  readonly showsGrid: boolean;
  /** Paper and repeated rows as the page prints them; the file's own set-up holds more and is kept beside. */
  readonly print: Print | null;
  /** Six hex digits. */
  readonly tabColor: string | null;
  /** Of columns that say nothing, in characters; null is the program's own. */
  readonly defaultWidth: number | null;
  /** Of rows that say nothing; null is the program's own. */
  readonly defaultHeight: number | null;
}

export interface BookRow {
  readonly row: number;
  readonly height?: number;
  readonly hidden?: boolean;
  /** Of the whole row, where cells have none of their own. */
  readonly style?: number;
  readonly cells: readonly BookCell[];
}

export interface BookCell {
  readonly column: number;
  /** What stands there or was computed last; null for a cell that only looks like something. */
  readonly value: CellValue;
  /**
   * In en-US form with its `=`, our functions as `POUR.X(`, younger functions without the file's marks, a formula that
   * the file shares already moved to this cell. One that cannot be worked out here, as it looks into another workbook
   * or belongs to a data table, is left out: the file keeps it, and its last value stands as a plain one.
   */
  readonly formula?: string;
  /** Of a formula that fills more cells than its own, what it covered last; these hold their values as cells. */
  readonly spill?: { readonly rows: number; readonly columns: number; readonly dynamic: boolean };
  /** Whether the cell was filled by a formula that stands in another one. */
  readonly spilled?: true;
  readonly style: number;
  /** A text in several looks, of which `value` is the plain text. */
  readonly runs?: readonly { readonly text: string; readonly font: Partial<Font> }[];
  /** Whether a text stands there that would be read as something else if it were typed (`'=1`, `'007`). */
  readonly quoted?: true;
}

/** Columns next to each other that have something in common. */
export interface ColumnRange {
  readonly first: number;
  readonly last: number;
  /** In characters of the standard font, as the file counts them. */
  readonly width?: number;
  readonly hidden?: boolean;
  readonly style?: number;
}

/** A rectangle of cells. */
export interface Area {
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
}

export interface CellStyle {
  readonly font: Font;
  /** Of a plain background; null where there is none. Other patterns are kept in the file and shown by one colour. */
  readonly fill: string | null;
  readonly border: Readonly<Partial<Record<"top" | "bottom" | "left" | "right", Edge>>>;
  /** The number format in its en-US form; `General` where there is none. */
  readonly format: string;
  readonly align: {
    readonly horizontal?: "left" | "center" | "right" | "fill" | "justify" | "centerContinuous" | "distributed";
    readonly vertical?: "top" | "center" | "bottom" | "justify" | "distributed";
    readonly wrap?: boolean;
    readonly indent?: number;
    /** Degrees against the clock, -90 to 90; "stacked" for letters one below the other. */
    readonly rotation?: number | "stacked";
    readonly shrink?: boolean;
  };
  /** Whether it may be changed on a protected sheet. */
  readonly unlocked?: true;
  /** Of cells that newer programs show as a box to tick, the number by which the file says so. */
  readonly control?: number;
}

export interface Font {
  readonly name: string;
  readonly size: number;
  readonly bold: boolean;
  readonly italic: boolean;
  readonly underline: "none" | "single" | "double";
  readonly strike: boolean;
  /** Null is the program's own. */
  readonly color: string | null;
  readonly raised?: "superscript" | "subscript";
}

export interface Edge {
  /** A line style by its name in the file format. */
  readonly style: string;
  readonly color: string | null;
}

export interface BookTable {
  readonly name: string;
  /** The whole of it: headings, rows, totals. */
  readonly area: Area;
  readonly hasHeadings: boolean;
  readonly hasTotals: boolean;
  readonly columns: readonly TableColumn[];
  readonly filter: Filter | null;
  /** The name of its look; null for none. */
  readonly look: string | null;
  readonly stripes: boolean;
}

export interface TableColumn {
  readonly heading: string;
  /** What a new row gets, as cells hold formulas. */
  readonly formula?: string;
  readonly total?: { readonly function?: string; readonly label?: string; readonly formula?: string };
}

export interface Filter {
  readonly area: Area;
  readonly columns: readonly FilterColumn[];
}

export interface FilterColumn {
  /** From the left of the area. */
  readonly column: number;
  /** The values that are let through; blanks with "". */
  readonly values?: readonly string[];
  /** One or two comparisons. */
  readonly custom?: { readonly and: boolean; readonly rules: readonly { operator: string; value: string }[] };
  /** Something else (a colour, the top ten, an average): kept in the file, not worked out here. */
  readonly other?: true;
}

export interface Validation {
  readonly areas: readonly Area[];
  readonly kind: "any" | "list" | "whole" | "decimal" | "date" | "time" | "textLength" | "custom";
  readonly operator:
    | "between"
    | "notBetween"
    | "equal"
    | "notEqual"
    | "greaterThan"
    | "lessThan"
    | "greaterThanOrEqual"
    | "lessThanOrEqual";
  /** As cells hold formulas, with their `=`; a list written out as `"a,b"` likewise. */
  readonly formulas: readonly string[];
  readonly allowsBlank: boolean;
  readonly showsList: boolean;
  /** Whether it is a box to tick here, for which the list stands in files. */
  readonly tickBox?: true;
  readonly onWrong: "stop" | "warning" | "information" | "none";
  readonly prompt?: { readonly title: string; readonly text: string };
  readonly error?: { readonly title: string; readonly text: string };
}

export interface Condition {
  readonly areas: readonly Area[];
  /** The file's own kind of rule: `cellIs`, `expression`, `colorScale`, `dataBar`, `iconSet`, `top10` and so on. */
  readonly kind: string;
  readonly priority: number;
  readonly stops: boolean;
  readonly operator?: string;
  readonly formulas: readonly string[];
  readonly text?: string;
  /** What it lays over the cell's own look. */
  readonly look?: { readonly font?: Partial<Font>; readonly fill?: string | null };
  /** Colour scales and data bars: where each colour stands. Icons: where each begins, `above` for above the value itself. */
  readonly stopsAt?: readonly {
    readonly kind: string;
    readonly value?: string;
    readonly color?: string;
    readonly above?: true;
  }[];
  /** Of a bar, where it is not plainly in one colour that fades, beside the value. */
  readonly bar?: { readonly solid: boolean; readonly negative: string | null; readonly hidesValue: boolean };
  readonly icons?: {
    readonly set: string;
    readonly reversed: boolean;
    readonly hidesValue: boolean;
    /** Where they were chosen one by one: each by its set and its place there, the lowest first; `NoIcons` for none. */
    readonly each?: readonly { readonly set: string; readonly place: number }[];
  };
  readonly rank?: { readonly count: number; readonly percent: boolean; readonly bottom: boolean };
  readonly average?: { readonly above: boolean; readonly orEqual: boolean; readonly deviations: number };
  /** Days that a rule for dates means: `today`, `lastWeek` and so on. */
  readonly period?: string;
  /** Whether it stands in the list of rules that only newer programs read. */
  readonly younger?: true;
}

export interface Note {
  readonly row: number;
  readonly column: number;
  readonly text: string;
  readonly author: string;
}

export interface Link {
  readonly area: Area;
  /** An address outside; null for a place in the workbook. */
  readonly address: string | null;
  /** A place, such as `Costs!A1`. */
  readonly place: string | null;
  readonly tip: string | null;
}

export interface DefinedName {
  readonly name: string;
  /** As cells hold formulas, with its `=`. */
  readonly formula: string;
  /** The sheet it is for alone, by its id; null for all. */
  readonly sheet: string | null;
  readonly hidden: boolean;
  readonly comment: string | null;
}

/** Something that the page does not show but keeps, or could not keep: named to the maker. */
export interface Remark {
  /** The sheet's name; null for the whole workbook. */
  readonly sheet: string | null;
  /** A short noun: `2 charts`, `a pivot table`, `pictures`. */
  readonly what: string;
  /** What becomes of it, a whole sentence. */
  readonly consequence: string;
}
