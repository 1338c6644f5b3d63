/** Defined names of a file as Univer keeps them, and back. */

import type { DefinedName } from "../../../file/book";

export interface NameJson {
  readonly id: string;
  readonly name: string;
  readonly formulaOrRefString: string;
  readonly comment?: string;
  readonly localSheetId?: string;
  readonly hidden?: boolean;
}

export type NamesJson = Readonly<Record<string, NameJson>>;

/** How Univer says that a name is for all sheets. */
const ALL = "AllDefaultWorkbook";

/** A place, or several, rather than something to be worked out: it goes without its `=`. */
const PLACES = /^=((?:(?:'(?:[^']|'')+'|[\p{L}\p{N}_.]+)!)?\$?[A-Z]+\$?\d+(?::\$?[A-Z]+\$?\d+)?,?)+$/u;

export function namesJson(names: readonly DefinedName[]): NamesJson {
  return Object.fromEntries(
    names.map(({ name, formula, sheet, hidden, comment }, i) => {
      const id = `d${i}`;
      const formulaOrRefString = PLACES.test(formula) ? formula.slice(1) : formula;
      const json: NameJson = {
        id,
        name,
        formulaOrRefString,
        localSheetId: sheet ?? ALL,
        ...(hidden && { hidden }),
        ...(comment !== null && { comment }),
      };
      return [id, json];
    }),
  );
}

/** By the ids of Univer. `sheetId` gives the id in the file of a sheet by that in Univer. */
export function namesOf(json: NamesJson, sheetId: (id: string) => string): Map<string, DefinedName> {
  return new Map(
    Object.values(json).map(({ id, name, formulaOrRefString, localSheetId, hidden, comment }) => [
      id,
      {
        name,
        formula: formulaOrRefString.startsWith("=") ? formulaOrRefString : `=${formulaOrRefString}`,
        sheet: localSheetId && localSheetId !== ALL ? sheetId(localSheetId) : null,
        hidden: hidden ?? false,
        comment: comment || null,
      },
    ]),
  );
}
