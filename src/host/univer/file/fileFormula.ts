/** Formulas of a file as Univer reads them, and back. */

import {
  type FormulaPlace,
  outsideTexts,
  PART,
  PARTS,
  type PlacedTable,
  tableNamed,
  UNREADABLE,
} from "../../../engine/references";
import type { Book, BookTable } from "../../../file/book";
import { columnLetters } from "../../../sheet/columnLetters";
import { quotedName } from "../../../sheet/sheetName";

/** The names by which Univer knows the columns of a table: their headings, without what it cannot read in a formula. */
export function knownNames(headings: readonly string[]): string[] {
  const taken = new Set(headings.map((heading) => heading.toLowerCase()));
  return headings.map((heading) => {
    const plain = heading.replace(/[()'{}#,:[\]"@\s]+/g, " ").trim() || "Column";
    if (plain === heading) return heading;
    let name = plain;
    for (let i = 2; taken.has(name.toLowerCase()); i++) name = `${plain} ${i}`;
    taken.add(name.toLowerCase());
    return name;
  });
}

/** A table's rows between its headings and its totals. */
const dataRows = ({ area, hasHeadings, hasTotals }: BookTable): number =>
  area.rows - (hasHeadings ? 1 : 0) - (hasTotals ? 1 : 0);

/** The tables of a workbook as Univer will know them. */
export function tablesOfBook({ sheets }: Pick<Book, "sheets">): PlacedTable[] {
  return sheets.flatMap((sheet) =>
    sheet.tables.map((table) => {
      const headings = table.columns.map(({ heading }) => heading);
      return {
        name: table.name,
        sheet: sheet.name,
        // Without headings the first row is the one above.
        row: table.area.row - (table.hasHeadings ? 0 : 1),
        column: table.area.column,
        headings,
        known: knownNames(headings),
        rows: dataRows(table),
      };
    }),
  );
}

/** `Pours[Fill]` */
const COLUMN = /([\p{L}_\\][\p{L}\p{N}_.]*)\[((?:'.|[^#@[\]'])(?:'.|[^[\]'])*)\]/gu;

/** A formula of Univer's as a file holds it. */
export function toFile(formula: string, place: FormulaPlace, tables: readonly PlacedTable[]): string {
  const named = formula.includes("[")
    ? outsideTexts(formula, (text) =>
        text
          .replace(PARTS, (whole, name: string, parts: string) => {
            const table = tableNamed(name, tables);
            return table
              ? `${name}[${parts.replace(PART, (part, said: string) => headingPart(part, said, table))}]`
              : whole;
          })
          .replace(COLUMN, (whole, name: string, said: string) => {
            const table = tableNamed(name, tables);
            const heading = table && headingOf(said, table);
            return heading === undefined ? whole : `${name}[${escaped(heading)}]`;
          }),
      )
    : formula;
  return tables.reduce((text, table) => withColumnsNamed(text, place, table), named);
}

/** Columns that Univer cannot name in a formula are plain references there: those to a whole column get its name back. */
function withColumnsNamed(formula: string, place: FormulaPlace, table: PlacedTable): string {
  const { headings, known = headings, column, row, rows } = table;
  const sheet = `${quotedName(table.sheet)}!`;
  if (!formula.includes(sheet)) return formula;
  return outsideTexts(formula, (text) =>
    known.reduce((before, name, i) => {
      if (!UNREADABLE.test(name)) return before;
      const heading = escaped(headings[i] as string);
      const letters = columnLetters(column + i);
      const whole = `${sheet}$${letters}$${row + 2}:$${letters}$${row + 1 + rows}`;
      const after = replaceWhole(before, whole, `${table.name}[${heading}]`);
      const isInside = place.sheet === table.sheet && place.row > row && place.row <= row + rows;
      const cell = `${sheet}$${letters}${place.row + 1}`;
      return isInside ? replaceWhole(after, cell, `${table.name}[[#This Row],[${heading}]]`) : after;
    }, text),
  );
}

/** Replaces a reference where it is not a part of a longer one. */
function replaceWhole(text: string, reference: string, by: string): string {
  return text
    .split(reference)
    .reduce((before, after) => `${before}${/^[\d:$]/.test(after) || before.endsWith(":") ? reference : by}${after}`);
}

function headingPart(part: string, said: string, table: PlacedTable): string {
  const heading = said.startsWith("#") ? undefined : headingOf(said, table);
  return heading === undefined ? part : `[${escaped(heading)}]`;
}

function headingOf(said: string, { headings, known = headings }: PlacedTable): string | undefined {
  const index = known.findIndex((name) => name.toLowerCase() === said.toLowerCase());
  return headings[index];
}

const escaped = (heading: string) => heading.replace(/['#@[\]]/g, "'$&");
