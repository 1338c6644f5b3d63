/** A sheet of Univer's as one for a file. */

import type { ICellData, IRange, IWorkbookData, IWorksheetData } from "@univerjs/core";
import type { PlacedTable } from "../../../engine/references";
import type { Book, BookSheet, BookTable, Filter } from "../../../file/book";
import { same } from "../../../file/same";
import type { Print } from "../../../sheet/sheet";
import { areaOf, type Extent } from "./areas";
import { type CellMemory, cellValue } from "./cellData";
import { NO, RESOURCES, TOTALS, YES } from "./codes";
import { columnRanges } from "./columnData";
import type { ConditionsJson } from "./conditionJson";
import { conditionsOf, DEFINITION } from "./conditionResource";
import { withFarAreas } from "./farAreas";
import { type FiltersJson, filterOf } from "./filterResource";
import { colorOf } from "./fonts";
import { asListed, type ById, byFileIds, mended, mendedAll, numbered } from "./keptAsWas";
import { heightOf, OWN, widthOf } from "./lengths";
import { linksOf } from "./linksOf";
import type { NamesJson } from "./nameResource";
import { type NotesJson, notesOf } from "./noteResource";
import { resource } from "./resources";
import { rowsOf } from "./rowsOf";
import type { StyleNumbers } from "./styleData";
import { columnId, type TableJson, type TablesJson, tableOf } from "./tableResource";
import { type ValidationsJson, validationOf } from "./validationResource";

/** What the packages beside the sheet keep, by the ids of Univer's sheets. */
export interface PluginData {
  readonly tables: TablesJson;
  readonly filters: FiltersJson;
  readonly validations: ValidationsJson;
  readonly conditions: ConditionsJson;
  readonly notes: NotesJson;
  readonly names: NamesJson;
}

/** A sheet as Univer was given it, with the workbook that it was a part of. */
export interface Opened {
  readonly data: Partial<IWorksheetData>;
  readonly book: Book;
}

type Matrix<T> = Readonly<Record<number, Readonly<Record<number, T | null | undefined>>>>;

export interface Context {
  readonly original: BookSheet | undefined;
  readonly before: Opened | undefined;
  readonly opened: PluginData | undefined;
  readonly plugins: PluginData;
  readonly tables: readonly PlacedTable[];
  readonly styles: StyleNumbers;
  readonly memory: CellMemory;
  readonly worked: {
    readonly filled: Matrix<ICellData>;
    readonly covered: Matrix<IRange>;
    readonly shared: Matrix<string>;
  };
  readonly sheetName: (id: string) => string | undefined;
}

/**
 * What a package does not say was not changed: it is there only once it was needed, and says nothing before.
 * `fileId` gives the id that a sheet had at the opening.
 */
export function pluginData(
  data: IWorkbookData,
  opened: PluginData | undefined,
  fileId: (id: string) => string,
): PluginData {
  const all = Object.entries(RESOURCES).map(([kind, name]) => {
    if (data.resources?.find((one) => one.name === name)?.data) return [kind, resource(data, name)];
    const before = (opened?.[kind as keyof PluginData] ?? {}) as Record<string, unknown>;
    return [kind, Object.fromEntries(data.sheetOrder.map((id) => [id, before[fileId(id)]]))];
  });
  return Object.fromEntries(all) as PluginData;
}

type SheetData = Partial<IWorksheetData> & { readonly id: string };

const extentOfData = ({ rowCount = 1000, columnCount = 26 }: Partial<IWorksheetData>): Extent => ({
  rows: rowCount,
  columns: columnCount,
});

const headingReader = (sheet: Partial<IWorksheetData>, row: number) => (column: number) => {
  const cell = sheet.cellData?.[row]?.[column];
  const value = cell ? cellValue(cell) : null;
  return value === null || typeof value === "object" ? "" : String(value).trim();
};

/** The tables of the workbook as they stand now. */
export function placedNow(
  data: IWorkbookData,
  json: TablesJson,
  originals: ReadonlyMap<string, BookSheet>,
): PlacedTable[] {
  return data.sheetOrder.flatMap((id) => {
    const sheet = data.sheets[id];
    if (!sheet) return [];
    return (json[id]?.tables ?? []).map((table) => {
      const { area, columns, hasHeadings, hasTotals } = tableNow(table, originals.get(id), sheet);
      return {
        name: table.name,
        sheet: sheet.name ?? "",
        row: area.row - (hasHeadings ? 0 : 1),
        column: area.column,
        headings: columns.map(({ heading }) => heading),
        known: table.columns.map(({ displayName }) => displayName),
        rows: area.rows - (hasHeadings ? 1 : 0) - (hasTotals ? 1 : 0),
      };
    });
  });
}

function tableNow(table: TableJson, original: BookSheet | undefined, sheet: Partial<IWorksheetData>): BookTable {
  const before = original?.tables.find(({ name }) => name === table.id) ?? (original && lookOfSource(table, original));
  const isTotals = (row: number) => sheet.rowData?.[row]?.custom?.[TOTALS] === true;
  return tableOf(table, before, headingReader(sheet, table.range.startRow), isTotals);
}

/** A table of a duplicate looks as the one that it was made from, by whose name its columns are still called. */
function lookOfSource({ columns }: TableJson, source: BookSheet): BookTable | undefined {
  const found = source.tables.find(({ name }) => columns.some(({ id }, i) => id === columnId(name, i)));
  return found && { ...found, columns: found.columns.map(({ heading }) => ({ heading })) };
}

export function sheetOf(sheet: SheetData, id: string, context: Context): BookSheet {
  const { original, before, opened, plugins } = context;
  const extent = extentOfData(sheet);
  const oldExtent = before ? extentOfData(before.data) : extent;
  const beforeId = original?.id ?? "";
  const kept = <T extends object>(
    originals: readonly T[],
    letter: string,
    read: (from: PluginData, id: string, extent: Extent) => ById<T>,
    moved: readonly (keyof T)[],
    together: readonly (keyof T)[] = [],
    whole: (originals: ById<T>, before: ById<T>, now: ById<T>, extent: Extent) => ById<T> = (_, __, now) => now,
  ) => {
    const all = numbered(letter, originals);
    const old = opened && original ? read(opened, beforeId, oldExtent) : new Map<string, T>();
    const now = whole(all, old, byFileIds(read(plugins, sheet.id, extent), old, moved), oldExtent);
    return asListed(originals, mendedAll(all, old, now, together));
  };
  return {
    id,
    ...flatNow(sheet, original, before),
    rows: rowsOf(sheet, hiddenRows(plugins, sheet.id), context),
    columns: columnsNow(sheet, context, extent, oldExtent),
    merges: mergesNow(sheet, original, before, extent, oldExtent),
    tables: tablesNow(sheet, context),
    filter: filterNow(context, sheet.id, extent, oldExtent),
    validations: kept(original?.validations ?? [], "v", validationsOf, ["areas"], VALIDATION, withFarAreas),
    conditions: inOrder(
      kept(original?.conditions ?? [], "c", conditionsIn, ["areas", "stops"], DEFINITION, withFarAreas),
      original?.conditions ?? [],
      plugins.conditions[sheet.id]?.length ?? 0,
    ),
    notes: kept(original?.notes ?? [], "n", (from, of) => notesOf(from.notes[of]), ["row", "column"]),
    links: linksOf(sheet, context),
  };
}

/** What makes a rule of what may be typed, which changes as one. */
const VALIDATION = ["kind", "operator", "formulas"] as const;

const conditionsIn = (from: PluginData, id: string, extent: Extent) => conditionsOf(from.conditions[id], extent);

const validationsOf = (from: PluginData, id: string, extent: Extent) =>
  new Map(
    (from.validations[id] ?? []).flatMap((json) => {
      const validation = validationOf(json, extent);
      return validation ? [[json.uid, validation] as const] : [];
    }),
  );

/**
 * The order and the priorities of the file, as long as its conditions win over each other as they did and there are no
 * others; else the first is the one that wins. Those after the first `shown` are such that Univer was not given.
 */
function inOrder(all: BookSheet["conditions"], originals: BookSheet["conditions"], shown: number) {
  const isOrdered = all.slice(0, shown).every(({ priority }, i) => priority > (all[i - 1]?.priority ?? 0));
  const sorted = [...all];
  if (isOrdered) {
    const place = new Map(originals.map(({ priority }, i) => [priority, i]));
    sorted.sort((a, b) => (place.get(a.priority) ?? 0) - (place.get(b.priority) ?? 0));
    return asListed(originals, sorted);
  }
  return sorted.map((one, i) => ({ ...one, priority: i + 1 }));
}

type Flat = Pick<
  BookSheet,
  "name" | "state" | "frozen" | "showsGrid" | "print" | "tabColor" | "defaultWidth" | "defaultHeight"
>;

/** What a sheet is as a whole. */
function flatNow(sheet: Partial<IWorksheetData>, original: BookSheet | undefined, before: Opened | undefined): Flat {
  const now = flatOf(sheet);
  if (!original || !before) return now;
  const { name, state, frozen, showsGrid, print, tabColor, defaultWidth, defaultHeight } = original;
  const old: Flat = { name, state, frozen, showsGrid, print, tabColor, defaultWidth, defaultHeight };
  return mended(old, flatOf(before.data), now);
}

/** What Univer itself gives columns and rows that say nothing. */
const UNIVERS = { width: 88, height: 24 };

function flatOf(sheet: Partial<IWorksheetData>): Flat {
  const { name = "", hidden, freeze, showGridlines, custom, tabColor, defaultColumnWidth, defaultRowHeight } = sheet;
  const isOwn = (pixels: number | undefined, key: keyof typeof OWN) =>
    pixels === undefined || pixels === OWN[key] || pixels === UNIVERS[key];
  return {
    name,
    state: hidden === YES ? "hidden" : "visible",
    frozen: { rows: freeze?.ySplit ?? 0, columns: freeze?.xSplit ?? 0 },
    showsGrid: showGridlines !== NO,
    print: (custom?.print as Print | undefined) ?? null,
    tabColor: colorOf(tabColor),
    defaultWidth: isOwn(defaultColumnWidth, "width") ? null : widthOf(defaultColumnWidth as number),
    defaultHeight: isOwn(defaultRowHeight, "height") ? null : heightOf(defaultRowHeight as number),
  };
}

/** The rows that filters hide. */
function hiddenRows(plugins: PluginData, id: string): ReadonlySet<number> {
  return new Set([
    ...(plugins.tables[id]?.tableFilteredOutRows ?? []),
    ...(plugins.filters[id]?.cachedFilteredOut ?? []),
  ]);
}

function columnsNow(sheet: SheetData, { original, before, styles }: Context, extent: Extent, old: Extent) {
  const originals = original?.columns ?? [];
  const now = columnRanges(sheet.columnData, originals, extent, styles);
  if (!before) return now;
  // Of a sheet that became larger or smaller, the columns at its end may differ in number alone.
  const was = columnRanges(before.data.columnData, originals, old, styles);
  return same(was, now) ? originals : now;
}

function mergesNow(
  { mergeData = [] }: SheetData,
  original: BookSheet | undefined,
  before: Opened | undefined,
  extent: Extent,
  old: Extent,
) {
  const now = mergeData.map((range) => areaOf(range, extent));
  const was = before?.data.mergeData?.map((range) => areaOf(range, old));
  return original && same(was, now) ? original.merges : now;
}

function tablesNow(sheet: SheetData, { original, before, opened, plugins }: Context): readonly BookTable[] {
  const read = (from: PluginData, id: string, data: Partial<IWorksheetData>) =>
    new Map((from.tables[id]?.tables ?? []).map((table) => [table.id, tableNow(table, original, data)]));
  const originals = original?.tables ?? [];
  const old = before && opened && original ? read(opened, original.id, before.data) : new Map<string, BookTable>();
  const byName = new Map(originals.map((table) => [table.name, table]));
  return asListed(originals, mendedAll(byName, old, read(plugins, sheet.id, sheet)));
}

function filterNow({ original, opened, plugins }: Context, id: string, extent: Extent, old: Extent): Filter | null {
  const now = filterOf(plugins.filters[id], original?.filter ?? null, extent);
  if (!original || !opened) return now;
  const was = filterOf(opened.filters[original.id], original.filter, old);
  return same(was, now) ? original.filter : now;
}
