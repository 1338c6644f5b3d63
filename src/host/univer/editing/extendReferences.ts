/** Formulas that read a whole column of a table by a plain reference read its new rows too. */

import type { ICellData, Injector, IRange, Worksheet } from "@univerjs/core";
import { IUniverInstanceService, type Workbook } from "@univerjs/core";
import { columnLetters } from "../../../sheet/columnLetters";
import { quotedName } from "../../../sheet/sheetName";
import { type Consequence, joined } from "./edits";
import { written } from "./newRows";

/** A column with a heading that Univer cannot read inside of a table reference stands so in formulas: see references.ts. */
export function extendReferences(
  injector: Injector,
  sheet: Worksheet,
  table: IRange,
  endRow: number,
): Consequence | null {
  const workbook = injector.get(IUniverInstanceService).getUnit<Workbook>(sheet.getUnitId());
  const first = table.startRow + 2;
  const name = sheet.getName();
  const letters = Array.from({ length: table.endColumn - table.startColumn + 1 }, (_, i) =>
    columnLetters(table.startColumn + i),
  );
  const quoted = escaped(`${quotedName(name)}!`);
  const column = new RegExp(
    `((?:${quoted}|(?<![\\w'.])${escaped(name)}!)\\$(${letters.join("|")})\\$${first}:\\$\\2\\$)${table.endRow + 1}(?!\\d)`,
    "g",
  );
  const all = (workbook?.getSheets() ?? []).map((one) => {
    const value: Record<number, Record<number, ICellData>> = {};
    one.getCellMatrix().forValue((row, at, cell) => {
      const formula = cell?.f;
      if (!formula?.includes(`$${first}:`)) return;
      const f = formula.replace(column, `$1${endRow + 1}`);
      if (f !== formula) value[row] = { ...value[row], [at]: { f } };
    });
    return written(injector, one, value);
  });
  return joined(...all);
}

const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");
