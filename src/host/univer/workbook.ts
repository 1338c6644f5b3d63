/** Described sheets as the workbook data that Univer opens. */

import {
  BooleanNumber,
  BorderStyleTypes,
  HorizontalAlign,
  type IBorderData,
  type ICellData,
  type IRange,
  type IStyleData,
  type IWorkbookData,
  type IWorksheetData,
  LocaleType,
  VerticalAlign,
  WrapStrategy,
} from "@univerjs/core";
import { cellContent, sheetSize } from "../../engine/content";
import { type PlacedTable, tablesOf } from "../../engine/references";
import type { Cell, Sheet, Table } from "../../sheet/sheet";
import { LINE, STYLES, type Style } from "../../sheet/styles";
import { CHECKS_RESOURCE, choiceRules } from "./editing/choices";
import { heightOf, leastHeight, widthsOf } from "./layout";
import { chartsResource } from "./placedCharts";

const ALIGN = { left: HorizontalAlign.LEFT, center: HorizontalAlign.CENTER, right: HorizontalAlign.RIGHT };

/** The name under which the table plugin keeps its tables in a workbook. */
const TABLES_RESOURCE = "SHEET_TABLE_PLUGIN";

/**
 * A workbook of these sheets. The id must be one that was never used before: the formula engine keeps what it
 * parsed by workbook id and text of the formula, tables included.
 */
export function workbookData(id: string, sheets: readonly Sheet[]): IWorkbookData {
  const ids = sheets.map((_, i) => `sheet${i + 1}`);
  const tables = tablesOf(sheets);
  return {
    id,
    name: "Pourwright",
    appVersion: "0.25.1",
    locale: LocaleType.EN_US,
    styles: {},
    sheetOrder: ids,
    sheets: Object.fromEntries(sheets.map((sheet, i) => [ids[i], worksheetData(ids[i] as string, sheet, tables)])),
    resources: [
      {
        name: TABLES_RESOURCE,
        data: JSON.stringify(
          Object.fromEntries(sheets.map((sheet, i) => [ids[i], { tables: (sheet.tables ?? []).map(tableData) }])),
        ),
      },
      {
        name: CHECKS_RESOURCE,
        data: JSON.stringify(
          Object.fromEntries(
            sheets.map((sheet, i) => [ids[i], (sheet.tables ?? []).flatMap((table) => choiceRules(table, tables))]),
          ),
        ),
      },
      ...chartsResource(sheets, (name) => ids[sheets.findIndex((sheet) => sheet.name === name)] ?? ""),
    ],
  };
}

/** A sheet of a workbook with these tables. */
export function worksheetData(
  id: string,
  sheet: Sheet,
  tables: readonly PlacedTable[],
): Partial<IWorksheetData> & { id: string; name: string } {
  const cellData: Record<number, Record<number, ICellData>> = {};
  const mergeData: IRange[] = [];
  const widths = widthsOf(sheet);
  const rowData: Record<number, { h: number }> = {};
  for (const cell of sheet.cells) {
    const across = cell.across ?? 1;
    const style = styleData(cell);
    cellData[cell.row] ??= {};
    const row = cellData[cell.row] as Record<number, ICellData>;
    // Each covered cell gets the look too, or the border would stop after the first.
    for (let i = 0; i < across; i++) row[cell.column + i] = style ? { s: style } : {};
    row[cell.column] = {
      ...(cell.content && cellContent(cell.content, { ...cell, sheet: sheet.name }, tables)),
      ...(style && { s: style }),
    };
    if (across > 1) {
      mergeData.push({
        startRow: cell.row,
        endRow: cell.row,
        startColumn: cell.column,
        endColumn: cell.column + across - 1,
      });
    }
    const height = heightOf(cell, sheet, widths);
    if (height > (rowData[cell.row]?.h ?? leastHeight(sheet, cell.row))) rowData[cell.row] = { h: height };
  }
  for (const row of Object.keys(sheet.heights ?? {})) rowData[Number(row)] ??= { h: leastHeight(sheet, Number(row)) };
  const frozen = sheet.frozenRows ?? 0;
  return {
    id,
    name: sheet.name,
    cellData,
    mergeData,
    ...sheetSize(sheet),
    // Excel's own measure: seven pixels for each character and five beside them.
    columnData: Object.fromEntries(
      widths.map((width, i) => [i, width === 0 ? { hd: BooleanNumber.TRUE } : { w: Math.round(width * 7 + 5) }]),
    ),
    rowData,
    ...(sheet.print && { custom: { print: sheet.print } }),
    freeze: frozen
      ? { xSplit: 0, ySplit: frozen, startRow: frozen, startColumn: -1 }
      : { xSplit: 0, ySplit: 0, startRow: -1, startColumn: -1 },
  };
}

/** A table as the table plugin keeps it. */
export function tableData({ name, row, column, headings, rows }: Table) {
  return {
    id: name,
    name,
    range: { startRow: row, startColumn: column, endRow: row + rows, endColumn: column + headings.length - 1 },
    options: { showHeader: true, showFooter: false },
    filters: { tableColumnFilterList: [] },
    columns: headings.map((heading, i) => ({
      id: `${name}.${i}`,
      displayName: heading,
      dataType: "none",
      formula: "",
      meta: {},
      style: {},
    })),
    meta: {},
  };
}

function styleData({ look, format, align }: Cell): IStyleData | undefined {
  const data: IStyleData = {
    ...lookStyle(STYLES[look ?? "body"]),
    ...(format && { n: { pattern: format } }),
    ...(align && { ht: ALIGN[align] }),
  };
  return Object.keys(data).length > 0 ? data : undefined;
}

export function lookStyle(style: Style): IStyleData {
  return {
    ...(style.bold && { bl: BooleanNumber.TRUE }),
    ...(style.italic && { it: BooleanNumber.TRUE }),
    ...(style.size && { fs: style.size }),
    ...(style.color && { cl: { rgb: `#${style.color}` } }),
    ...(style.fill && { bg: { rgb: `#${style.fill}` } }),
    ...(style.wrap && { tb: WrapStrategy.WRAP, vt: VerticalAlign.MIDDLE }),
    ...(style.border && { bd: borders(style.border) }),
  };
}

function borders(sides: NonNullable<Style["border"]>): IBorderData {
  const line = { s: BorderStyleTypes.THIN, cl: { rgb: `#${LINE}` } };
  if (sides === "bottom") return { b: line };
  if (sides === "top") return { t: line };
  return { t: line, b: line, l: line, r: line };
}
