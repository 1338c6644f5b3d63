import type { Book } from "../book";
import type { PackageEdit } from "./packageEdit";
import { putter, rawOf } from "./putter";
import { attributeOf, type Cut, cut, element, join, withAttributes } from "./rawXml";

/** By ECMA-376 Part 1, 18.2.27. */
export const putInWorkbook = putter(
  "fileVersion fileSharing workbookPr alternateContent workbookProtection bookViews sheets functionGroups externalReferences definedNames calcPr oleSize customWorkbookViews pivotCaches smartTagPr smartTagTypes webPublishing fileRecoveryPr webPublishObjects extLst",
);

/** A sheet as the workbook's part lists it. */
export interface Listed {
  /** `sheetId` as a text. */
  readonly id: string;
  readonly raw: string;
  readonly path: string;
}

export function listedSheets(file: PackageEdit, path: string): Listed[] {
  const paths = new Map(file.relations(path).map((one) => [one.id, one.target]));
  return cut(rawOf(cut(file.read(path)), "sheets") ?? "<sheets/>").pieces.flatMap(({ name, raw }) =>
    name === "sheet"
      ? [{ id: attributeOf(raw, "sheetId") ?? "", raw, path: paths.get(attributeOf(raw, "id") ?? "") ?? "" }]
      : [],
  );
}

/** The tabs of the file once it is written, the sheets among them that hold no cells, such as one with a chart alone. */
export function arranged(old: readonly Listed[], before: Book, now: Book): readonly string[] {
  const ids = now.sheets.map(({ id }) => id);
  for (const [i, { id }] of old.entries()) {
    if (before.sheets.some((sheet) => sheet.id === id)) continue;
    const neighbours = old.slice(0, i).map((one) => ids.indexOf(one.id));
    ids.splice(Math.max(-1, ...neighbours.slice(-1)) + 1, 0, id);
  }
  return ids;
}

/** Lists the sheets in this order, by the names that they have now. */
export function putSheets(workbook: Cut, order: readonly string[], listed: readonly Listed[], now: Book): void {
  const sheets = order.map((id) => {
    const raw = listed.find((one) => one.id === id)?.raw ?? "";
    const sheet = now.sheets.find((one) => one.id === id);
    if (!sheet) return raw;
    return withAttributes(raw, {
      ...(attributeOf(raw, "name") !== sheet.name && { name: sheet.name }),
      ...((attributeOf(raw, "state") ?? "visible") !== sheet.state && {
        state: sheet.state === "visible" ? null : sheet.state,
      }),
    });
  });
  putInWorkbook(workbook, "sheets", element("sheets", {}, ...sheets));
}

/** Opens the workbook at this tab. */
export function putActive(workbook: Cut, place: number): void {
  const views = cut(rawOf(workbook, "bookViews") ?? "<bookViews><workbookView/></bookViews>");
  const pieces = views.pieces.map(({ name, raw }, i) =>
    i === views.pieces.findIndex((one) => one.name === "workbookView")
      ? { name, raw: withAttributes(raw, { activeTab: place === 0 ? null : place, firstSheet: null }) }
      : { name, raw },
  );
  putInWorkbook(workbook, "bookViews", join({ ...views, pieces }));
}
