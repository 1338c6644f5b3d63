import { columnLetters } from "../../sheet/columnLetters";
import { quotedName } from "../../sheet/sheetName";
import type { Book, BookSheet, DefinedName } from "../book";
import { toFileFormula } from "../formula/toFile";
import { same } from "../same";
import { rawOf } from "./putter";
import { attributeOf, type Cut, cut, element, escapeText, unescapeText, withAttributes } from "./rawXml";
import { inAnyCase, type Renames, renamedIn } from "./renames";
import { putInWorkbook } from "./workbookSheets";

const TITLES = "_xlnm.Print_Titles";
const FILTERED = "_xlnm._FilterDatabase";

interface InFile {
  readonly name: string;
  readonly sheet: string | null;
  readonly raw: string;
}

/**
 * Lists the names: those that are as they were keep their text, those that the book does not tell of stay, as long as
 * their sheet does. Names of one sheet say its place among the tabs.
 */
export function putNames(
  workbook: Cut,
  tabs: { readonly before: readonly string[]; readonly now: readonly string[] },
  books: { readonly before: Book; readonly now: Book },
  renames: Renames,
): void {
  const { before, now } = books;
  const old = inFile(rawOf(workbook, "definedNames"), tabs.before);
  const isSame = (a: { name: string; sheet: string | null }, b: typeof a): boolean =>
    a.name === b.name && a.sheet === b.sheet;
  const told = now.names.map((name): InFile => {
    const kept = before.names.some((one) => same(one, name)) ? old.find((one) => isSame(one, name)) : undefined;
    return { name: name.name, sheet: name.sheet, raw: kept ? renamedRaw(kept.raw, renames) : nameXml(name) };
  });
  const untold = old.filter((one) => !before.names.some((name) => isSame(name, one)));
  const kept = [
    ...untold.map((one) => ({ ...one, raw: renamedRaw(one.raw, renames) })),
    ...now.sheets.flatMap((sheet) => ofDuplicate(untold, sheet, before)),
  ];
  const all = now.sheets.reduce<readonly InFile[]>(
    (names, sheet) =>
      ofSheet(
        names,
        before.sheets.find(({ id }) => id === sheet.id) ?? before.sheets.find(({ id }) => id === sheet.copyOf),
        sheet,
      ),
    [...told, ...kept],
  );
  // Those that were there stay in their order.
  const place = (one: InFile): number => {
    const found = old.findIndex((was) => isSame(was, one));
    return found < 0 ? old.length : found;
  };
  const places = [...all]
    .sort((a, b) => place(a) - place(b))
    .flatMap(({ sheet, raw }) => {
      if (sheet === null) return [raw];
      const tab = tabs.now.indexOf(sheet);
      if (tab < 0) return [];
      return [
        Number(attributeOf(raw, "localSheetId") ?? -1) === tab ? raw : withAttributes(raw, { localSheetId: tab }),
      ];
    });
  if (places.join("") === old.map(({ raw }) => raw).join("")) return;
  putInWorkbook(workbook, "definedNames", places.length === 0 ? "" : element("definedNames", {}, ...places));
}

/** What the format says by names of the sheet that a duplicate was made from, such as what is printed of it. */
function ofDuplicate(names: readonly InFile[], { id, name, copyOf }: BookSheet, before: Book): InFile[] {
  const source = before.sheets.find((sheet) => sheet.id === copyOf);
  if (!source || before.sheets.some((sheet) => sheet.id === id)) return [];
  const renames = inAnyCase([[source.name, name]]);
  return names
    .filter((one) => one.sheet === source.id && one.name.startsWith("_xlnm."))
    .map((one) => ({ name: one.name, sheet: id, raw: renamedRaw(one.raw, renames) }));
}

function inFile(raw: string | undefined, tabs: readonly string[]): InFile[] {
  return cut(raw ?? "<definedNames/>").pieces.flatMap((piece) => {
    if (piece.name !== "definedName") return [];
    const place = attributeOf(piece.raw, "localSheetId");
    const sheet = place === undefined ? null : (tabs[Number(place)] ?? "");
    return [{ name: attributeOf(piece.raw, "name") ?? "", sheet, raw: piece.raw }];
  });
}

const nameXml = ({ name, formula, hidden, comment }: DefinedName): string =>
  element("definedName", { name, comment, hidden: hidden || null }, escapeText(toFileFormula(formula)));

function renamedRaw(raw: string, renames: Renames): string {
  if (renames.size === 0) return raw;
  const { head, pieces, tail } = cut(raw);
  const formula = unescapeText(pieces.map((piece) => piece.raw).join(""));
  const renamed = renamedIn(formula, renames);
  return renamed === formula ? raw : head + escapeText(renamed) + tail;
}

/** The names by which the format says a sheet's filter, and the rows and columns that its pages repeat. */
function ofSheet(names: readonly InFile[], before: BookSheet | undefined, now: BookSheet): readonly InFile[] {
  const sheet = quotedName(now.name);
  const other = (name: string) => (one: InFile) => one.sheet !== now.id || one.name !== name;
  const named = (name: string, formula: string, hidden: true | null): InFile[] =>
    formula === "" ? [] : [{ name, sheet: now.id, raw: element("definedName", { name, hidden }, escapeText(formula)) }];
  let all = names;
  if (!same(before?.print?.repeatRows, now.print?.repeatRows)) {
    const old = all.find((one) => !other(TITLES)(one))?.raw ?? "";
    const columns = /\$[A-Z]{1,3}:\$[A-Z]{1,3}/.exec(old)?.[0];
    const rows = now.print?.repeatRows?.map((row) => `$${row + 1}`).join(":");
    const areas = [columns, rows].flatMap((area) => (area === undefined ? [] : [`${sheet}!${area}`]));
    all = [...all.filter(other(TITLES)), ...named(TITLES, areas.join(","), null)];
  }
  if (!same(before?.filter?.area, now.filter?.area)) {
    const { row = 0, column = 0, rows = 1, columns = 1 } = now.filter?.area ?? {};
    const corner = (r: number, c: number): string => `$${columnLetters(c)}$${r + 1}`;
    const area = `${sheet}!${corner(row, column)}:${corner(row + rows - 1, column + columns - 1)}`;
    all = [...all.filter(other(FILTERED)), ...named(FILTERED, now.filter ? area : "", true)];
  }
  return all;
}
