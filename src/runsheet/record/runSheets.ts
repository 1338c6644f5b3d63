import type { CellValue } from "../../sheet/sheet";
import { lotIn } from "../sheet/layout";

/** A sheet of the workbook that holds a run. */
export interface RunSheet {
  readonly name: string;
  readonly lot: string;
}

/** The run sheets of a workbook, the newest last: known by their titles, for tabs are renamed and copied. */
export function runSheetsOf(cells: readonly { readonly sheet: string; readonly value: CellValue }[]): RunSheet[] {
  return cells
    .flatMap(({ sheet, value }) => {
      const lot = lotIn(value);
      return lot === undefined ? [] : [{ name: sheet, lot }];
    })
    .sort((a, b) => Number(a.lot > b.lot) - Number(a.lot < b.lot));
}

/** The other sheets that carry the lot of this one: copies of it, or it of them. */
export const copiesOf = (sheet: RunSheet, sheets: readonly RunSheet[]): RunSheet[] =>
  sheets.filter(({ name, lot }) => lot === sheet.lot && name !== sheet.name);
