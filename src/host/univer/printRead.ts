import {
  BooleanNumber,
  BorderStyleTypes,
  getColorStyle,
  getDisplayValueFromCell,
  HorizontalAlign,
  type IBorderStyleData,
  type Injector,
  type IStyleData,
  type Worksheet,
  WrapStrategy,
} from "@univerjs/core";
import { spilledCells } from "../../engine/cells";
import { usualPaper } from "../../sheet/paper";
import type { Print } from "../../sheet/sheet";
import { shownNumber } from "./numberThatFits";
import type { PrintedSheet } from "./printPage";
import { type PrintedCell, type PrintedRow, showsNothing } from "./printTable";

/** What a sheet keeps of how it is to be printed. Sheets that users add keep nothing. */
const printOf = (sheet: Worksheet) => sheet.getCustomMetadata()?.print as Print | undefined;

const ALIGN: Partial<Record<HorizontalAlign, "left" | "center" | "right">> = {
  [HorizontalAlign.LEFT]: "left",
  [HorizontalAlign.CENTER]: "center",
  [HorizontalAlign.RIGHT]: "right",
};

/** Lines that are not thin and whole. */
const LINES: Partial<Record<BorderStyleTypes, string>> = {
  [BorderStyleTypes.DOTTED]: "0.75pt dotted",
  [BorderStyleTypes.DASHED]: "0.75pt dashed",
  [BorderStyleTypes.DOUBLE]: "2.25pt double",
  [BorderStyleTypes.MEDIUM]: "1.5pt solid",
  [BorderStyleTypes.THICK]: "2.25pt solid",
};

/** A sheet as it shows now, with the paper it was made for or else the one that is usual for the language. */
export function printedSheet(injector: Injector, sheet: Worksheet, language: string): PrintedSheet {
  const print = printOf(sheet);
  const begins = new Set(print?.newPages);
  const [first, last] = print?.repeatRows ?? [-1, -1];
  const size = sizeOf(injector, sheet);
  const rows = upTo(size.rows).filter((row) => sheet.getRowVisible(row));
  const columns = upTo(size.columns).filter((column) => sheet.getColVisible(column));
  const merges = mergesOf(sheet, rows, columns);

  const printed = rows.map((row): PrintedRow => {
    const cells = columns.map((column) => {
      const merge = merges.get(`${row},${column}`);
      if (merge === "covered") return undefined;
      return { ...printedCell(sheet, merge?.row ?? row, merge?.column ?? column), ...merge?.covers };
    });
    return {
      height: sheet.getRowHeight(row),
      cells,
      ...(row >= first && row <= last && { repeats: true }),
      ...(begins.has(row) && { beginsPage: true }),
    };
  });
  const ends = printed.map(({ cells }) =>
    cells.reduce((end, cell, i) => (cell && !showsNothing(cell) ? i + (cell.across ?? 1) : end), 0),
  );
  const end = ends.reduce((last, one, i) => (one > 0 ? i + 1 : last), 0);
  if (end === 0) throw new Error(`The sheet "${sheet.getName()}" is empty: there is nothing to print.`);
  const width = ends.reduce((most, one) => Math.max(most, one), 0);
  return {
    name: sheet.getName(),
    paper: print?.paper ?? usualPaper(language),
    ...(print && { landscape: print.landscape ?? false }),
    widths: columns.slice(0, width).map((column) => sheet.getColumnWidth(column)),
    rows: printed.slice(0, end).map((row) => ({ ...row, cells: row.cells.slice(0, width) })),
  };
}

const upTo = (end: number, first = 0) => Array.from({ length: Math.max(0, end - first) }, (_, i) => first + i);

/** How many rows and columns of a sheet hold anything, if only a look. */
function sizeOf(injector: Injector, sheet: Worksheet): { rows: number; columns: number } {
  let [rows, columns] = [0, 0];
  const note = (row: number, column: number) => {
    rows = Math.max(rows, row + 1);
    columns = Math.max(columns, column + 1);
  };
  sheet.getCellMatrix().forValue(note);
  for (const [row, cells] of Object.entries(spilledCells(injector, sheet))) {
    for (const column of Object.keys(cells)) note(Number(row), Number(column));
  }
  return { rows, columns };
}

/** The visible cells of each merge: the first shows what the merge holds, the others are covered by it. */
function mergesOf(sheet: Worksheet, rows: readonly number[], columns: readonly number[]) {
  const merges = new Map<
    string,
    "covered" | { row: number; column: number; covers: { across: number; down: number } }
  >();
  const [shownRows, shownColumns] = [new Set(rows), new Set(columns)];
  for (const { startRow, endRow, startColumn, endColumn } of sheet.getMergeData()) {
    const down = upTo(endRow + 1, startRow).filter((row) => shownRows.has(row));
    const across = upTo(endColumn + 1, startColumn).filter((column) => shownColumns.has(column));
    for (const row of down) for (const column of across) merges.set(`${row},${column}`, "covered");
    merges.set(`${down[0]},${across[0]}`, {
      row: startRow,
      column: startColumn,
      covers: { across: across.length, down: down.length },
    });
  }
  return merges;
}

function printedCell(sheet: Worksheet, row: number, column: number): PrintedCell {
  const cell = sheet.getCell(row, column);
  const style = sheet.getComposedCellStyleByCellData(row, column, cell);
  const number = shownNumber(cell);
  const align = ALIGN[style.ht ?? HorizontalAlign.UNSPECIFIED] ?? (number ? "right" : undefined);
  const [color, fill] = [getColorStyle(style.cl), getColorStyle(style.bg)];
  const borders = bordersOf(style);
  return {
    text: getDisplayValueFromCell(cell),
    ...(align && { align }),
    ...(number && { number }),
    ...(style.bl === BooleanNumber.TRUE && { bold: true }),
    ...(style.it === BooleanNumber.TRUE && { italic: true }),
    ...(style.st?.s === BooleanNumber.TRUE && { line: "line-through" as const }),
    ...(style.ul?.s === BooleanNumber.TRUE && { line: "underline" as const }),
    ...(style.fs && { size: style.fs }),
    ...(style.tb === WrapStrategy.WRAP && { wrap: true }),
    ...(color && { color }),
    ...(fill && { fill }),
    ...(Object.keys(borders).length > 0 && { borders }),
  };
}

function bordersOf({ bd }: IStyleData): NonNullable<PrintedCell["borders"]> {
  const sides = { top: bd?.t, right: bd?.r, bottom: bd?.b, left: bd?.l };
  return Object.fromEntries(
    Object.entries(sides).flatMap(([side, border]) =>
      border && border.s !== BorderStyleTypes.NONE ? [[side, lineOf(border)]] : [],
    ),
  );
}

const lineOf = ({ s, cl }: IBorderStyleData) => `${LINES[s] ?? "0.75pt solid"} ${getColorStyle(cl) ?? "#000"}`;
