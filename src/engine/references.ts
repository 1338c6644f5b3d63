import { columnLetters } from "../sheet/columnLetters";
import type { Sheet } from "../sheet/sheet";
import { quotedName } from "../sheet/sheetName";

/** A table with the sheet it stands on. */
export interface PlacedTable {
  readonly name: string;
  readonly sheet: string;
  /** Of its heading, from 0. */
  readonly row: number;
  /** From 0. */
  readonly column: number;
  readonly headings: readonly string[];
  /** The headings by which Univer knows the columns, where users have changed them since: it keeps the first ones. */
  readonly known?: readonly string[];
  /** Rows below the heading, without a row of totals. */
  readonly rows: number;
  /** Whether a row of totals follows, which Univer knows nothing of. */
  readonly hasTotals?: boolean;
}

/** Where a formula stands: rows and columns from 0. */
export interface FormulaPlace {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
}

export const tablesOf = (sheets: readonly Sheet[]): PlacedTable[] =>
  sheets.flatMap((sheet) => (sheet.tables ?? []).map((table) => ({ ...table, sheet: sheet.name })));

/** What a heading may hold in Excel that Univer 0.25 cannot read inside a table reference. */
export const UNREADABLE = /[()'{}#,:[\]]/;

const TEXT = /("(?:[^"]|"")*")/;

/**
 * References to a table's column, or to its cell in the formula's own row: `Vessels[Water]`, `Vessels[[Water]]`,
 * `Vessels[[#This Row],[Water]]`, `Vessels[@Water]`, `[@[Water (g)]]`. An apostrophe escapes what follows it.
 */
const REFERENCE =
  /(?<name>[\p{L}_][\p{L}\p{N}_.]*)?\[(?:(?<thisRow>\[#This Row\],\s*|@)?\[(?<boxed>(?:'.|[^[\]'])+)\]|(?<at>@)?(?<bare>(?:'.|[^#@[\]'])(?:'.|[^[\]'])*))\]/giu;

const ONE_COLUMN = new RegExp(`^${REFERENCE.source}$`, "iu");

/** `Pours[[#Headers],[Fill]]`, `Pours[[Fill]:[Wax]]`, `Pours[#All]`: a reference that names parts of a table. */
export const PARTS = /([\p{L}_\\][\p{L}\p{N}_.]*)\[((?:\s*\[(?:'.|[^[\]'])*\]\s*[,:]?)+|#[^[\]]+)\]/gu;

export const PART = /\[((?:'.|[^[\]'])*)\]/g;

interface Parts {
  readonly name?: string;
  readonly thisRow?: string;
  readonly boxed?: string;
  readonly at?: string;
  readonly bare?: string;
}

/**
 * A formula as Univer can read it. It knows table references only with the table's name, not with `@`, in the
 * capitals of the table, and not with every heading: what it cannot read becomes a plain reference.
 */
export function readableFormula(formula: string, place: FormulaPlace, tables: readonly PlacedTable[]): string {
  if (!formula.includes("[")) return formula;
  return outsideTexts(formula, (text) =>
    text
      .replace(REFERENCE, (whole, ...rest) => readable(whole, rest.at(-1), place, tables))
      .replace(PARTS, (whole, name: string, parts: string) => {
        const table = ONE_COLUMN.test(whole) ? undefined : tableNamed(name, tables);
        return table
          ? `${table.name}[${inCapitals(parts).replace(PART, (part, said: string) => knownPart(part, said, table))}]`
          : whole;
      }),
  );
}

/** Parts that are no columns, in the capitals in which files name them: `#all` is `#All`. */
const inCapitals = (parts: string): string =>
  parts.replace(/#(?:All|Data|Headers|Totals|This Row)\b/gi, (part) =>
    part.toLowerCase().replace(/[a-z]+/g, (word) => word.charAt(0).toUpperCase() + word.slice(1)),
  );

/** A formula with what stands outside of its texts changed. */
export function outsideTexts(formula: string, change: (text: string) => string): string {
  return formula
    .split(TEXT)
    .map((part, i) => (i % 2 === 1 ? part : change(part)))
    .join("");
}

export const tableNamed = (name: string, tables: readonly PlacedTable[]): PlacedTable | undefined =>
  tables.find((table) => same(table.name, name));

function knownPart(part: string, said: string, { headings, known = headings }: PlacedTable): string {
  const wanted = unescaped(said);
  const index = said.startsWith("#") ? -1 : headings.findIndex((heading) => same(heading, wanted));
  return index < 0 ? part : `[${known[index]}]`;
}

function readable(whole: string, parts: Parts, place: FormulaPlace, tables: readonly PlacedTable[]): string {
  const inRow = Boolean(parts.thisRow ?? parts.at);
  const table = parts.name ? tableNamed(parts.name, tables) : inRow && tableAround(place, tables);
  const wanted = unescaped(parts.boxed ?? parts.bare ?? "");
  const index = table ? table.headings.findIndex((heading) => same(heading, wanted)) : -1;
  const heading = table ? (table.known ?? table.headings)[index] : undefined;
  if (!table || heading === undefined) return whole;
  if (!UNREADABLE.test(heading)) return `${table.name}[${inRow ? `[#This Row],[${heading}]` : heading}]`;

  const letters = columnLetters(table.column + index);
  const sheet = `${quotedName(table.sheet)}!`;
  if (inRow) return `${sheet}$${letters}${place.row + 1}`;
  return `${sheet}$${letters}$${table.row + 2}:$${letters}$${table.row + 1 + table.rows}`;
}

/** The table that a place is in. */
export const tableAround = (place: FormulaPlace, tables: readonly PlacedTable[]): PlacedTable | undefined =>
  tables.find(
    (table) =>
      isInRows(place, table) && place.column >= table.column && place.column < table.column + table.headings.length,
  );

/** Whether a place is in or beside one of a table's rows. */
export const isInRows = ({ sheet, row }: FormulaPlace, table: PlacedTable): boolean =>
  table.sheet === sheet && row > table.row && row <= table.row + table.rows;

/** A heading as it stands in its cell, of one in a formula. */
export const unescaped = (said: string): string => said.replace(/'(.)/g, "$1").trim();

const same = (a: string, b: string | undefined) => a.toLowerCase() === b?.toLowerCase();
