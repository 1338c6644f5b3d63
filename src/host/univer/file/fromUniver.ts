/** The workbook data that Univer holds as a workbook for a file. */

import type { ICellData, IRange, IWorkbookData } from "@univerjs/core";
import type { Book, BookSheet } from "../../../file/book";
import { ASIDE, CellMemory } from "./cellData";
import { RESOURCES } from "./codes";
import { tablesOfBook } from "./fileFormula";
import { asListed, mendedAll, numbered } from "./keptAsWas";
import { namesOf } from "./nameResource";
import { resource } from "./resources";
import { type Opened, type PluginData, placedNow, pluginData, sheetOf } from "./sheetOf";
import { StyleNumbers } from "./styleData";
import { sheetData, workbookFrame } from "./toUniver";

type Matrix<T> = Readonly<Record<number, Readonly<Record<number, T | null | undefined>>>>;

/** What Univer worked out and keeps outside of its workbook data, by the ids of its sheets. */
export interface WorkedOut {
  /** The cells that formulas fill. */
  readonly filled?: Readonly<Record<string, Matrix<ICellData>>>;
  /** What each formula that fills cells covers, by the cell that it stands in. */
  readonly covered?: Readonly<Record<string, Matrix<IRange>>>;
  /** The formulas of cells that share theirs with others. */
  readonly shared?: Readonly<Record<string, Matrix<string>>>;
  /** The id of the sheet that is shown. */
  readonly active?: string;
}

/**
 * `openedAs` is what the file holds that the workbook came from, null for none: what was not changed since is taken
 * from it as it is.
 */
export function fromUniver(data: IWorkbookData, openedAs: Book | null, workedOut: WorkedOut = {}): Book {
  const styles = new StyleNumbers(openedAs?.styles, data.styles);
  const memory = new CellMemory(openedAs ? tablesOfBook(openedAs) : []);
  const own = originalsOf(data, openedAs);
  const originals = new Map([...own, ...sourcesOf(data, openedAs, own)]);
  const fileId = (id: string) => own.get(id)?.id ?? id;
  const opened = openedAs && openedSheets(openedAs, memory);
  const plugins = pluginData(data, opened?.plugins, (id) => originals.get(id)?.id ?? id);
  const tables = placedNow(data, plugins.tables, originals);
  const sheets = data.sheetOrder.flatMap((id) => {
    const sheet = data.sheets[id];
    if (!sheet) return [];
    const original = originals.get(id);
    const before = original && opened?.sheets.get(original.id);
    const worked = {
      filled: workedOut.filled?.[id] ?? {},
      covered: workedOut.covered?.[id] ?? {},
      shared: workedOut.shared?.[id] ?? {},
    };
    const sheetName = (other: string) => data.sheets[other]?.name;
    const context = { original, before, opened: opened?.plugins, plugins, tables, styles, memory, worked, sheetName };
    const made = sheetOf({ ...sheet, id }, fileId(id), context);
    return [own.has(id) || !original ? made : { ...made, copyOf: original.id }];
  });
  const { [ASIDE]: aside, ...settings } = (data.custom ?? {}) as Record<string, string> & {
    [ASIDE]?: { active?: string };
  };
  const active = data.sheetOrder.indexOf(workedOut.active ?? aside?.active ?? "");
  return {
    sheets,
    styles: styles.styles,
    names: namesNow(data, openedAs, opened?.plugins, fileId),
    active: Math.max(0, active),
    from1904: openedAs?.from1904 ?? false,
    settings: settings as Record<string, string>,
  };
}

/**
 * The sheets of the file by the ids of those in Univer that they became. A sheet that got its id in the file only
 * when it was saved is known by its name, one of a sample by its place.
 */
function originalsOf(data: IWorkbookData, openedAs: Book | null): Map<string, BookSheet> {
  const found = new Map<string, BookSheet>();
  const free = new Set(openedAs?.sheets);
  const claim = (id: string, sheet: BookSheet | undefined) => {
    if (!sheet || found.has(id) || !free.delete(sheet)) return;
    found.set(id, sheet);
  };
  const all = openedAs?.sheets ?? [];
  for (const id of data.sheetOrder)
    claim(
      id,
      all.find((one) => one.id === id),
    );
  for (const id of data.sheetOrder)
    claim(
      id,
      all.find((one) => one.name === data.sheets[id]?.name),
    );
  for (const id of data.sheetOrder) claim(id, all[Number(/^sheet(\d+)$/.exec(id)?.[1] ?? 0) - 1]);
  return found;
}

/** Of duplicates, the sheets of the file that they were made from: they carry the ids that those were given. */
function sourcesOf(
  data: IWorkbookData,
  openedAs: Book | null,
  own: ReadonlyMap<string, BookSheet>,
): Map<string, BookSheet> {
  return new Map(
    data.sheetOrder.flatMap((id) => {
      const from = (data.sheets[id]?.custom?.[ASIDE] as { sheet?: string } | undefined)?.sheet;
      const source = openedAs?.sheets.find((sheet) => sheet.id === from);
      return source && !own.has(id) ? [[id, source] as const] : [];
    }),
  );
}

/** What Univer was given at the opening, read in the way in which it is read now. */
function openedSheets(book: Book, memory: CellMemory): { sheets: Map<string, Opened>; plugins: PluginData } {
  const frame = workbookFrame(book, "opened");
  const plugins = pluginData(frame, undefined, (id) => id);
  return {
    plugins,
    sheets: new Map(book.sheets.map((sheet) => [sheet.id, { data: sheetData(sheet, book, memory), book }])),
  };
}

function namesNow(
  data: IWorkbookData,
  openedAs: Book | null,
  opened: PluginData | undefined,
  fileId: (id: string) => string,
): Book["names"] {
  const originals = openedAs?.names ?? [];
  const before = namesOf(opened?.names ?? {}, (id) => id);
  const said = data.resources?.find(({ name }) => name === RESOURCES.names)?.data;
  const now = said ? namesOf(resource(data, RESOURCES.names), fileId) : before;
  return asListed(originals, mendedAll(numbered("d", originals), before, now));
}
