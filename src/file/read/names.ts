import type { DefinedName } from "../book";
import { fromFileFormula } from "../formula/fromFile";
import { children, type Element } from "../xml/tree";
import { isOn } from "./values";

/** The names that a workbook defines. */
export interface Names {
  /** Those of the maker; what the program keeps by names of its own (`_xlnm.`) stays in the file. */
  readonly own: readonly DefinedName[];
  /** By the sheet's id, a formula of the rows and columns that its pages repeat. */
  readonly titles: ReadonlyMap<string, string>;
}

/** @param ids the ids of all sheets in the order of their tabs */
export function readNames(element: Element | undefined, ids: readonly string[]): Names {
  const own: DefinedName[] = [];
  const titles = new Map<string, string>();
  for (const { attributes, text } of children(element, "definedName")) {
    const { name = "", localSheetId, comment } = attributes;
    const sheet = localSheetId === undefined ? null : ids[Number(localSheetId)];
    if (name === "" || text.trim() === "" || sheet === undefined) continue;
    const formula = fromFileFormula(text.trim());
    if (/^_xlnm\.Print_Titles$/i.test(name) && sheet !== null) titles.set(sheet, formula);
    if (/^_xlnm\./i.test(name)) continue;
    own.push({ name, formula, sheet, hidden: isOn(attributes.hidden), comment: comment ?? null });
  }
  return { own, titles };
}
