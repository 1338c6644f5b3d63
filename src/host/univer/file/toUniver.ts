/** A workbook of a file as the workbook data that Univer opens. */

import type { ICellData, IRowData, IWorkbookData, IWorksheetData } from "@univerjs/core";
import type { Book, BookRow, BookSheet, Link } from "../../../file/book";
import { type Extent, rangeOf, WHOLE } from "./areas";
import { ASIDE, type CellLink, type CellMemory, cellData } from "./cellData";
import { EN_US, NO, RESOURCES, TOTALS, YES } from "./codes";
import { columnData } from "./columnData";
import { conditionsJson } from "./conditionResource";
import { tablesOfBook } from "./fileFormula";
import { filterJson, isFilteredBySheet, isFilteredByTable } from "./filterResource";
import { headingRoom } from "./headingRoom";
import { heightPixels, OWN, widthPixels } from "./lengths";
import { urlOf } from "./links";
import { namesJson } from "./nameResource";
import { notesJson } from "./noteResource";
import { fittedHeights } from "./rowHeights";
import { styleData, styleId } from "./styleData";
import { type SheetTables, tableJson } from "./tableResource";
import { validationsJson } from "./validationResource";

/** Room below and beside what a sheet holds, for the user and for results that spill. */
const SPARE = { rows: 200, columns: 12 };
const LEAST = { rows: 1000, columns: 26 };

/** The id must be one that was never used before: the formula engine keeps what it parsed by it. */
export function toUniver(book: Book, id: string): IWorkbookData {
  return {
    ...workbookFrame(book, id),
    sheets: Object.fromEntries(book.sheets.map((sheet) => [sheet.id, sheetData(sheet, book)])),
  };
}

/** All of it but its sheets, which may be many and long. */
export function workbookFrame(book: Book, id: string): IWorkbookData {
  return {
    id,
    name: id,
    appVersion: "0.25.1",
    locale: EN_US,
    styles: Object.fromEntries(book.styles.map((style, i) => [styleId(i), styleData(style)])),
    sheetOrder: book.sheets.map((sheet) => sheet.id),
    sheets: {},
    resources: resourcesOf(book),
    custom: { ...book.settings, [ASIDE]: { active: book.sheets[book.active]?.id } },
  };
}

/** What the packages beside the sheet itself keep, those that are there only later too. */
function resourcesOf({ sheets, names }: Book): NonNullable<IWorkbookData["resources"]> {
  const each = <T>(of: (sheet: BookSheet, extent: Extent) => T | null) =>
    Object.fromEntries(
      sheets.flatMap((sheet) => {
        const json = of(sheet, extentOf(sheet));
        return json === null ? [] : [[sheet.id, json]];
      }),
    );
  const all = {
    tables: each(tablesOfSheet),
    filters: each(filterJson),
    validations: each(({ validations }, extent) => validationsJson(validations, extent)),
    conditions: each(({ conditions }, extent) => conditionsJson(conditions, extent)),
    notes: each(({ notes }) => (notes.length > 0 ? notesJson(notes) : null)),
    names: namesJson(names),
  };
  return Object.entries(all).map(([kind, json]) => ({
    name: RESOURCES[kind as keyof typeof RESOURCES],
    data: JSON.stringify(json),
  }));
}

function tablesOfSheet({ tables, rows }: BookSheet): SheetTables {
  const isFiltered = (row: number) => tables.some(({ filter }) => isFilteredByTable(filter, row));
  const hidden = rows.flatMap(({ row, hidden }) => (hidden && isFiltered(row) ? [row] : []));
  return { tables: tables.map(tableJson), tableFilteredOutRows: hidden };
}

/** Rules for cells that hold nothing make a sheet no larger than this. */
const MOST_FOR_RULES = { rows: 20_000, columns: 702 };

/** How large a sheet is to be in Univer. */
function extentOf({ rows, merges, tables, validations, conditions }: BookSheet): Extent {
  let lastRow = rows.at(-1)?.row ?? 0;
  let lastColumn = 0;
  for (const { cells } of rows) lastColumn = Math.max(lastColumn, cells.at(-1)?.column ?? 0);
  for (const { row, column, rows, columns } of [...merges, ...tables.map(({ area }) => area)]) {
    lastRow = Math.max(lastRow, row + rows - 1);
    lastColumn = Math.max(lastColumn, column + columns - 1);
  }
  for (const { row, column, rows, columns } of [...validations, ...conditions].flatMap(({ areas }) => areas)) {
    if (row + rows <= MOST_FOR_RULES.rows) lastRow = Math.max(lastRow, row + rows - 1);
    if (column + columns <= MOST_FOR_RULES.columns) lastColumn = Math.max(lastColumn, column + columns - 1);
  }
  return {
    rows: Math.min(WHOLE.rows, Math.max(LEAST.rows, lastRow + 1 + SPARE.rows)),
    columns: Math.min(WHOLE.columns, Math.max(LEAST.columns, lastColumn + 1 + SPARE.columns)),
  };
}

/** One sheet; what is said in its cells is noted in the memory, if one is given. */
export function sheetData(sheet: BookSheet, book: Book, memory?: CellMemory): Partial<IWorksheetData> {
  const extent = extentOf(sheet);
  const { frozen, defaultWidth, defaultHeight } = sheet;
  const usualWidth = defaultWidth === null ? OWN.width : widthPixels(defaultWidth);
  const usualHeight = defaultHeight === null ? OWN.height : heightPixels(defaultHeight);
  const fitted = fittedHeights(sheet, book.styles);
  return {
    id: sheet.id,
    name: sheet.name,
    tabColor: sheet.tabColor ? `#${sheet.tabColor}` : "",
    hidden: sheet.state === "visible" ? NO : YES,
    rowCount: extent.rows,
    columnCount: extent.columns,
    defaultColumnWidth: usualWidth,
    defaultRowHeight: usualHeight,
    // A cell that says nothing looks as the first style does.
    defaultStyle: styleId(0),
    cellData: cellsData(sheet, book, extent, memory),
    rowData: rowsData(sheet, (row) => fitted(row, usualHeight)),
    columnData: roomyColumns(sheet, book, extent, usualWidth),
    mergeData: sheet.merges.map((area) => rangeOf(area, extent)),
    freeze: {
      xSplit: frozen.columns,
      ySplit: frozen.rows,
      startRow: frozen.rows || -1,
      startColumn: frozen.columns || -1,
    },
    showGridlines: sheet.showsGrid ? YES : NO,
    custom: { [ASIDE]: { sheet: sheet.id }, ...(sheet.print && { print: sheet.print }) },
  };
}

/** The columns, wider for their headings where the file leaves their width to the program. */
function roomyColumns(sheet: BookSheet, book: Book, extent: Extent, usual: number): IWorksheetData["columnData"] {
  const data = columnData(sheet.columns, extent);
  for (const [column, w] of headingRoom(sheet, book.styles)) {
    const said = data[column];
    if (w > usual && said?.w === undefined && said?.hd === undefined) data[column] = { ...said, w };
  }
  return data;
}

function rowsData(sheet: BookSheet, fitted: (row: BookRow) => number | undefined): IWorksheetData["rowData"] {
  const data: Record<number, Partial<IRowData>> = Object.fromEntries(
    sheet.rows.flatMap((row) => rowData(row, sheet, fitted(row))),
  );
  for (const { area, hasTotals } of sheet.tables) {
    const last = area.row + area.rows - 1;
    if (hasTotals) data[last] = { ...data[last], custom: { [TOTALS]: true } };
  }
  return data;
}

/** A row that a filter hides is hidden by that one, or it would stay so when the filter goes. */
function rowData(
  { row, height, hidden, style }: BookRow,
  { filter, tables }: BookSheet,
  fitted: number | undefined,
): [number, Partial<IRowData>][] {
  const isFiltered = isFilteredBySheet(filter, row) || tables.some((one) => isFilteredByTable(one.filter, row));
  const data: Partial<IRowData> = {
    // One without a height of its own follows its text, and goes on doing so.
    ...(height === undefined ? fitted !== undefined && { ah: fitted } : { h: heightPixels(height), ia: NO }),
    ...(hidden && !isFiltered && { hd: YES }),
    ...(style && { s: styleId(style) }),
  };
  return Object.keys(data).length > 0 ? [[row, data]] : [];
}

function cellsData(sheet: BookSheet, book: Book, extent: Extent, memory?: CellMemory): IWorksheetData["cellData"] {
  const tables = tablesOfBook(book);
  const links = linksByCell(sheet.links, book);
  const styledColumns = new Set(
    Object.entries(columnData(sheet.columns, extent)).flatMap(([column, { s }]) => (s ? [Number(column)] : [])),
  );
  const data: Record<number, Record<number, ICellData>> = {};
  for (const { row, cells, style } of sheet.rows) {
    const line: Record<number, ICellData> = {};
    for (const cell of cells) {
      if (cell.column >= extent.columns) continue;
      const isStyled = Boolean(style) || styledColumns.has(cell.column);
      const place = { sheet: sheet.name, row, column: cell.column };
      const link = links.get(`${row},${cell.column}`);
      const made = cellData(cell, place, { tables, styles: book.styles, link, isStyled });
      links.delete(`${row},${cell.column}`);
      memory?.note(cell, made);
      line[cell.column] = made;
    }
    if (cells.length > 0) data[row] = line;
  }
  // Links of cells that hold nothing.
  for (const [key, { number }] of links) {
    const [row, column] = key.split(",").map(Number) as [number, number];
    data[row] = { ...data[row], [column]: { custom: { [ASIDE]: { link: number } } } };
  }
  return data;
}

function linksByCell(links: readonly Link[], book: Book): Map<string, CellLink> {
  return new Map(
    links.map((link, number) => {
      const { row, column } = link.area;
      return [`${row},${column}`, { id: `l${number}`, number, url: urlOf(link, book) ?? "" }];
    }),
  );
}
