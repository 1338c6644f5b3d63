import type { DefinedName } from "../book";
import { fromFileFormula } from "../formula/fromFile";
import { children, type Element } from "../xml/tree";
import { isOn } from "./values";

/** A name as the file defines it, the file's own ones (`_xlnm.`) among them. */
export interface FileName extends DefinedName {
  /** Whether it says something to the program, such as what is printed. */
  readonly isBuiltIn: boolean;
}

/** @param ids the ids of all sheets in the order of their tabs */
export function readNames(element: Element | undefined, ids: readonly string[]): FileName[] {
  return children(element, "definedName").flatMap(({ attributes, text }) => {
    const { name = "", localSheetId, comment } = attributes;
    const sheet = localSheetId === undefined ? null : ids[Number(localSheetId)];
    if (name === "" || text.trim() === "" || sheet === undefined) return [];
    return [
      {
        name,
        formula: fromFileFormula(text.trim()),
        sheet,
        hidden: isOn(attributes.hidden),
        comment: comment ?? null,
        isBuiltIn: /^_xlnm\./i.test(name),
      },
    ];
  });
}
