import type { Book, Remark } from "../book";
import { damaged, FileRefused } from "../refused";
import { child, children, type Element, readTree } from "../xml/tree";
import { contentTypes, type Relationship, relationships } from "../zip/package";
import type { Package } from "../zip/unpack";
import { colorReader } from "./colors";
import { dynamicMarks } from "./dynamic";
import { FormulaBudget } from "./formulas";
import { readNames } from "./names";
import { type ListedSheet, partOf, readSheet, type SheetContext } from "./readSheet";
import { Remarks } from "./remarks";
import { readSettings } from "./settings";
import { readSharedTexts } from "./sharedTexts";
import { readStyles } from "./styles";
import { isOn } from "./values";
import { remarkOnWorkbook } from "./workbookRemarks";

/** A workbook from its parts, of which `path` names the workbook's own. */
export function readWorkbook(
  pack: Package,
  path: string,
  progress?: (share: number) => void,
): { book: Book; remarks: Remark[] } {
  const root = readTree(path, partOf(pack, path));
  if (root.name !== "workbook") throw damaged(`The part "${path}" should be the workbook and is none.`);
  const related = relationships(pack, path);
  const remarks = new Remarks();
  remarkOnWorkbook(pack, path, root, remarks);

  const tabs = children(child(root, "sheets"), "sheet");
  const ids = tabs.map(({ attributes }) => attributes.sheetId ?? "");
  const byId = new Map(related.map((one) => [one.id, one]));
  const typeOf = contentTypes(pack);
  const listed = tabs.flatMap((tab) => listSheet(tab, byId, typeOf, pack, remarks) ?? []);
  if (listed.length === 0) {
    throw new FileRefused(
      "This workbook has no sheet with cells. Add one in the program that made it, and open it again.",
    );
  }
  const from1904 = isOn(child(root, "workbookPr")?.attributes.date1904);
  const names = readNames(child(root, "definedNames"), ids);
  const { styles, context } = sheetContext(pack, related, from1904, names.titles, remarks);
  const sizes = listed.map((sheet) => pack.parts.get(sheet.path)?.length ?? 0);
  const total = sizes.reduce((sum, size) => sum + size, 1);
  let done = 0;
  const sheets = listed.map((sheet, i) => {
    const read = readSheet(sheet, context, (share) => progress?.((done + share * (sizes[i] as number)) / total));
    done += sizes[i] as number;
    return read;
  });
  const book: Book = {
    sheets,
    styles,
    names: names.own,
    active: activeSheet(root, ids, sheets),
    from1904,
    settings: readSettings(pack, path),
  };
  return { book, remarks: remarks.all };
}

const STATES = ["visible", "hidden", "veryHidden"] as const;

/** A sheet with cells as the workbook lists it; of other kinds of sheets a remark. */
function listSheet(
  { attributes }: Element,
  related: ReadonlyMap<string, Relationship>,
  typeOf: (path: string) => string,
  pack: Package,
  remarks: Remarks,
): ListedSheet | undefined {
  const { name = "", sheetId = "", state } = attributes;
  const relation = related.get(attributes["r:id"] ?? "");
  if (!relation || !pack.parts.has(relation.target)) throw damaged(`The sheet "${name}" is missing.`);
  if (relation.kind !== "worksheet") {
    const what = relation.kind === "chartsheet" ? "a chart on a sheet of its own" : "a sheet of an old kind";
    remarks.add(name, what, "The page does not show this sheet; it stays in the file when you save.");
    return undefined;
  }
  if (!/worksheet\+xml$/.test(typeOf(relation.target))) {
    throw damaged(`The sheet "${name}" is not marked as one.`);
  }
  return { id: sheetId, name, state: STATES.find((one) => one === state) ?? "visible", path: relation.target };
}

/** Reads what the sheets share. */
function sheetContext(
  pack: Package,
  related: readonly Relationship[],
  from1904: boolean,
  titles: SheetContext["titles"],
  remarks: Remarks,
) {
  const pathOf = (kind: string): string | undefined => related.find((one) => one.kind === kind)?.target;
  const rootOf = (kind: string): Element | undefined => {
    const path = pathOf(kind);
    const bytes = path === undefined ? undefined : pack.parts.get(path);
    return path !== undefined && bytes ? readTree(path, bytes) : undefined;
  };
  const styleRoot = rootOf("styles");
  const colors = colorReader(rootOf("theme"), styleRoot);
  const { styles, quoted, overlays } = readStyles(styleRoot, colors);
  const textPath = pathOf("sharedStrings") ?? "";
  const textBytes = pack.parts.get(textPath);
  const context: SheetContext = {
    pack,
    overlays,
    titles,
    people: rootOf("person"),
    remarks,
    cells: {
      texts: textBytes ? readSharedTexts(textPath, textBytes, colors) : [],
      styles,
      quoted,
      colors,
      from1904,
      isDynamic: dynamicMarks(rootOf("sheetMetadata")),
      formulas: new FormulaBudget(),
      cells: { count: 0 },
    },
  };
  return { styles, context };
}

/** The place of the sheet that is shown; of the first one in sight where the file shows one that is not here. */
function activeSheet(root: Element, ids: readonly string[], sheets: Book["sheets"]): number {
  const view = child(child(root, "bookViews"), "workbookView");
  const active = ids[Number(view?.attributes.activeTab ?? 0)];
  const isShown = (sheet: Book["sheets"][number] | undefined): boolean => sheet?.state === "visible";
  const found = sheets.findIndex(({ id }) => id === active);
  return isShown(sheets[found]) ? found : Math.max(0, sheets.findIndex(isShown));
}
