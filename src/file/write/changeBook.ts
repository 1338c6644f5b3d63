import type { Book, BookSheet, Remark } from "../book";
import { emptySheet } from "../emptyBook";
import { callsOurs } from "../formula/callsOurs";
import { same } from "../same";
import { workbookPath } from "../zip/package";
import { duplicateOf, withoutParts } from "./duplicate";
import { dynamicMark } from "./dynamicArrays";
import { lostIn } from "./lost";
import { putNames } from "./names";
import { newSheet, PRESENT_ENGINE } from "./newPackage";
import type { PackageEdit } from "./packageEdit";
import { withPermittedNames } from "./permittedNames";
import { rawOf } from "./putter";
import { attributeOf, type Cut, cut, element, join, withAttributes } from "./rawXml";
import { renameElsewhere } from "./renameElsewhere";
import { inAnyCase, type Renames } from "./renames";
import { putSettings } from "./settings";
import { settleTables } from "./settleTables";
import { changeSheet } from "./sheetXml";
import { Styles } from "./styles";
import { arranged, type Listed, listedSheets, putActive, putInWorkbook, putSheets } from "./workbookSheets";

const SHEET = "application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml";

/** Puts what differs into the parts of the file that a book came from; tells what these cannot keep as it was. */
export function changeBook(file: PackageEdit, before: Book, wished: Book): Remark[] {
  const path = workbookPath(file);
  if (path === undefined) throw new Error("The file does not say where its workbook is.");
  const reached = file.reachable();
  const old = listedSheets(file, path);
  const unseen = old.filter(({ id }) => !before.sheets.some((sheet) => sheet.id === id));
  const names = unseen.map(({ raw }) => attributeOf(raw, "name") ?? "");
  const permitted = withPermittedNames(before, wished, names);
  const now = withFileIds(settleTables(before, permitted.book), old);
  const lost = [...permitted.lost, ...lostIn(file, old, before, now)];

  const removed = before.sheets.filter(({ id }) => !now.sheets.some((sheet) => sheet.id === id));
  const added = now.sheets.filter(({ id }) => !before.sheets.some((sheet) => sheet.id === id));
  for (const { id } of removed) {
    const raw = old.find((one) => one.id === id)?.raw ?? "";
    file.unrelate(path, attributeOf(raw, "id") ?? "");
  }
  const sources = sourcesOf(before, added);
  const texts = new Map(
    added.flatMap(({ id, name }) => {
      const source = sources.get(id);
      const from = old.find((one) => one.id === source?.id)?.path;
      return source && from !== undefined ? [[id, duplicateOf(file.read(from), source, name)] as const] : [];
    }),
  );
  const listed = [...old, ...added.map((sheet) => addSheet(file, path, sheet, texts.get(sheet.id) ?? newSheet()))];
  changeSheets(file, path, listed, before, now);

  const renames = inAnyCase(
    now.sheets.flatMap(({ id, name }) => {
      const was = before.sheets.find((sheet) => sheet.id === id)?.name;
      return was === undefined || was === name ? [] : [[was, name] as const];
    }),
  );
  renameElsewhere(file, renames);
  if (!same(before.settings, now.settings)) putSettings(file, path, now.settings);
  changeWorkbook(file, path, { old, listed }, { before, now }, renames);
  if (formulasDiffer(before, now)) dropRelated(file, path, "calcChain");
  dropRelated(file, "", "origin");
  const isListed = ({ name }: BookSheet): boolean => before.sheets.some((sheet) => sheet.name === name);
  if (removed.length > 0 || !now.sheets.every(isListed)) forgetTitles(file);

  const left = file.reachable();
  for (const part of reached) if (!left.has(part)) file.remove(part);
  return lost;
}

/** A book whose sheets all have ids as files know them. */
function withFileIds(book: Book, listed: readonly Listed[]): Book {
  const known = new Set(listed.map(({ id }) => id));
  let last = Math.max(0, ...[...known, ...book.sheets.map(({ id }) => id)].map(Number).filter(Number.isInteger));
  const ids = new Map(
    book.sheets.map(({ id }) => [id, known.has(id) || /^[1-9]\d{0,8}$/.test(id) ? id : String(++last)]),
  );
  return {
    ...book,
    sheets: book.sheets.map((sheet) => ({ ...sheet, id: ids.get(sheet.id) as string })),
    names: book.names.map((name) => ({
      ...name,
      sheet: name.sheet === null ? null : (ids.get(name.sheet) ?? name.sheet),
    })),
  };
}

/** The sheets of the file that duplicates were made from, by the ids of these. */
const sourcesOf = (before: Book, added: readonly BookSheet[]): ReadonlyMap<string, BookSheet> =>
  new Map(
    added.flatMap(({ id, copyOf }) => {
      const source = before.sheets.find((sheet) => sheet.id === copyOf);
      return source ? [[id, source] as const] : [];
    }),
  );

function addSheet(file: PackageEdit, workbook: string, { id, name }: BookSheet, text: string): Listed {
  const path = file.freePath("xl/worksheets/sheet", ".xml");
  file.add(path, SHEET, text);
  const relation = file.relate(workbook, "worksheet", { path });
  return { id, path, raw: element("sheet", { name, sheetId: id, "r:id": relation }) };
}

function changeSheets(file: PackageEdit, workbook: string, listed: readonly Listed[], before: Book, now: Book): void {
  const stylesPath = file.relations(workbook).find(({ kind }) => kind === "styles")?.target;
  if (stylesPath === undefined) throw new Error("The file does not say how its cells look.");
  const styles = new Styles(file, stylesPath, before.styles, now.styles);
  if (before.styles.length === 0) addStyles(styles, now);
  let mark: number | undefined;
  const [wasActive, isActive] = [before.sheets[before.active]?.id, now.sheets[now.active]?.id];
  for (const sheet of now.sheets) {
    const source = before.sheets.find(({ id }) => id === sheet.copyOf);
    const was =
      before.sheets.find(({ id }) => id === sheet.id) ??
      (source ? withoutParts(source) : emptySheet(sheet.id, sheet.name));
    const path = listed.find(({ id }) => id === sheet.id)?.path;
    if (path === undefined) continue;
    changeSheet(file, path, was, sheet, {
      styleOf: (cell) => styles.styleOf(cell),
      overlay: (look) => styles.overlay(look),
      dynamicMark: () => (mark ??= dynamicMark(file, workbook)),
      from1904: before.from1904,
      ...(wasActive !== isActive && [wasActive, isActive].includes(sheet.id) && { isChosen: sheet.id === isActive }),
    });
  }
  styles.save();
}

/** Gives the looks of a new file their numbers in the book. */
function addStyles(styles: Styles, { sheets, styles: all }: Book): void {
  const texts = sheets.flatMap(({ rows }) =>
    rows.flatMap(({ cells }) => cells.filter(({ value, formula }) => typeof value === "string" && !formula)),
  );
  const plain = new Set(texts.filter(({ quoted }) => !quoted).map(({ style }) => style));
  const quoted = new Set(texts.map(({ style }) => style).filter((style) => !plain.has(style)));
  for (const style of all.keys()) styles.styleOf(quoted.has(style) ? { style, quoted: true } : { style });
}

function changeWorkbook(
  file: PackageEdit,
  path: string,
  sheets: { readonly old: readonly Listed[]; readonly listed: readonly Listed[] },
  books: { readonly before: Book; readonly now: Book },
  renames: Renames,
): void {
  const { before, now } = books;
  const workbook = cut(file.read(path));
  const [was, tabs] = [sheets.old.map(({ id }) => id), arranged(sheets.old, before, now)];
  const isListed = (sheet: BookSheet, i: number): boolean => {
    const old = before.sheets[i];
    return old?.id === sheet.id && old.name === sheet.name && old.state === sheet.state;
  };
  if (!same(was, tabs) || !now.sheets.every(isListed)) putSheets(workbook, tabs, sheets.listed, now);
  const [wasActive, isActive] = [before.sheets[before.active], now.sheets[now.active]];
  if (isActive && (wasActive?.id !== isActive.id || was.indexOf(isActive.id) !== tabs.indexOf(isActive.id)))
    putActive(workbook, tabs.indexOf(isActive.id));
  putNames(workbook, { before: was, now: tabs }, books, renames);
  if (before.from1904) change(workbook, "workbookPr", { date1904: null });
  putEngine(workbook, now);
  file.write(path, join(workbook));
}

function change(workbook: Cut, name: string, attributes: Parameters<typeof withAttributes>[1]): void {
  const raw = rawOf(workbook, name);
  if (raw !== undefined) putInWorkbook(workbook, name, withAttributes(raw, attributes));
}

/** Figures of our functions must not be worked out again on opening: see PRESENT_ENGINE. */
function putEngine(workbook: Cut, now: Book): void {
  if (!formulasOf(now).some(([, formula]) => callsOurs(formula))) return;
  const raw = rawOf(workbook, "calcPr") ?? "<calcPr/>";
  if (Number(attributeOf(raw, "calcId") ?? 0) < PRESENT_ENGINE)
    putInWorkbook(workbook, "calcPr", withAttributes(raw, { calcId: PRESENT_ENGINE, fullCalcOnLoad: null }));
}

/** Each cell's formula by where it stands. */
const formulasOf = (book: Book): (readonly [string, string])[] =>
  book.sheets.flatMap(({ id, rows }) =>
    rows.flatMap(({ row, cells }) =>
      cells.flatMap(({ column, formula }) =>
        formula === undefined ? [] : [[`${id} ${row} ${column}`, formula] as const],
      ),
    ),
  );

/** The order in which formulas were worked out is for those that were there; programs find a new one. */
function formulasDiffer(before: Book, now: Book): boolean {
  const [were, are] = [new Map(formulasOf(before)), new Map(formulasOf(now))];
  return were.size !== are.size || [...are].some(([cell, formula]) => were.get(cell) !== formula);
}

function dropRelated(file: PackageEdit, path: string, kind: string): void {
  for (const relation of file.relations(path)) if (relation.kind === kind) file.unrelate(path, relation.id);
}

/** The properties of the file list its sheets once more; they need not. */
function forgetTitles(file: PackageEdit): void {
  const path = file.relations("").find(({ kind }) => kind === "extended-properties")?.target;
  if (path === undefined || file.text(path) === undefined) return;
  const properties = cut(file.read(path));
  const pieces = properties.pieces.filter(({ name }) => !["HeadingPairs", "TitlesOfParts"].includes(name));
  if (pieces.length < properties.pieces.length) file.write(path, join({ ...properties, pieces }));
}
