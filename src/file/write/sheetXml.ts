import type { BookSheet, Condition } from "../book";
import { same } from "../same";
import { putConditions } from "./conditions";
import { filterXml } from "./filterXml";
import { putLinks } from "./links";
import { putNotes } from "./notes";
import type { PackageEdit } from "./packageEdit";
import { putPage } from "./page";
import { cut, join } from "./rawXml";
import { changedRows, type RowContext } from "./rows";
import { putChosen, putColumns, putDimension, putMerges, putTabColor, putUsualSizes, putView } from "./sheetLook";
import { put, rawOf } from "./sheetOrder";
import { putTables } from "./tables";
import { putValidations } from "./validations";

export interface SheetContext extends RowContext {
  overlay(look: NonNullable<Condition["look"]>): number;
  /** Whether its tab is chosen now; undefined when that is as it was. */
  readonly isChosen?: boolean;
}

/** Puts into a sheet's part, and into the parts it refers to, what differs. */
export function changeSheet(
  file: PackageEdit,
  path: string,
  before: BookSheet,
  now: BookSheet,
  context: SheetContext,
): void {
  const sheet = cut(file.read(path));
  const differs = (...features: readonly (keyof BookSheet)[]): boolean =>
    features.some((feature) => !same(before[feature], now[feature]));

  if (differs("rows") || context.from1904) {
    put(sheet, "sheetData", changedRows(rawOf(sheet, "sheetData") ?? "<sheetData/>", before.rows, now.rows, context));
    putDimension(sheet, now);
  }
  if (differs("showsGrid", "frozen")) putView(sheet, before, now);
  if (context.isChosen !== undefined) putChosen(sheet, context.isChosen);
  if (differs("tabColor")) putTabColor(sheet, now.tabColor);
  if (differs("defaultWidth", "defaultHeight")) putUsualSizes(sheet, before, now);
  if (differs("columns")) putColumns(sheet, before.columns, now.columns, (style) => context.styleOf({ style }));
  if (differs("merges")) putMerges(sheet, now.merges);
  if (differs("filter")) put(sheet, "autoFilter", filterXml(before.filter, now.filter, rawOf(sheet, "autoFilter")));
  if (differs("conditions")) putConditions(sheet, before.conditions, now.conditions, context.overlay);
  if (differs("validations")) putValidations(sheet, before.validations, now.validations);
  if (differs("links")) putLinks(file, path, sheet, before.links, now.links);
  if (differs("print")) putPage(file, path, sheet, now);
  if (differs("notes")) putNotes(file, path, sheet, before, now);
  if (differs("tables")) putTables(file, path, sheet, before, now);
  file.write(path, join(sheet));
}
