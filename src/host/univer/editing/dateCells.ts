/** A formula in a cell of dates: what it gives is shown as a date, even where it is no day but a weight or a price. */

import { type Injector, IUniverInstanceService, type Nullable, type Workbook, type Worksheet } from "@univerjs/core";
import {
  deserializeRangeWithSheet,
  IDefinedNamesService,
  LexerTreeBuilder,
  sequenceNodeType,
} from "@univerjs/engine-formula";
import { getPatternType } from "@univerjs/preset-sheets-core";
import { cellName } from "../../../engine/problems";
import { placedTables } from "../placedTables";
import { cellsOf, type Edit, sheetsOf } from "./edits";

const MAKES_DATES = /\b(TODAY|NOW|DATE|DATEVALUE|EDATE|EOMONTH|WORKDAY(\.INTL)?|TIME|TIMEVALUE)\(/i;

/** What is to be said of an edit; nothing where it put no formula into a cell of dates, or one that works with dates. */
export function dateDoubt(injector: Injector, edit: Edit): string {
  const workbook = injector.get(IUniverInstanceService).getUnit<Workbook>(edit.unitID);
  const [id] = sheetsOf(edit);
  const sheet = id && workbook?.getSheetBySheetId(id);
  if (!workbook || !sheet) return "";
  const written = [...cellsOf(edit.redoMutations, id)].flatMap(([row, line]) =>
    [...line].map(([column, { f }]) => ({ row, column, f })),
  );
  const [cell, ...more] = written;
  if (!cell?.f || more.length > 0 || !showsDate(sheet, cell.row, cell.column)) return "";
  if (worksWithDates(injector, workbook, sheet, cell.f)) return "";
  return `${cellName(cell)} shows dates, so the result of this formula looks like one. If it is none, choose another number format for the cell.`;
}

const showsDate = (sheet: Worksheet, row: number, column: number): boolean => {
  const pattern = sheet.getComposedCellStyle(row, column)?.n?.pattern;
  return pattern !== undefined && /date|time/.test(getPatternType(pattern));
};

/** Also where it cannot be told. A name is followed to what it stands for, a table's column to its first cell. */
function worksWithDates(
  injector: Injector,
  workbook: Workbook,
  sheet: Worksheet,
  formula: string,
  followed: readonly string[] = [],
): boolean {
  if (MAKES_DATES.test(formula)) return true;
  const nodes = injector.get(LexerTreeBuilder).sequenceNodesBuilder(formula) ?? [];
  const isDate = (on: Nullable<Worksheet>, row: number, column: number) => !on || showsDate(on, row, column);
  return nodes.some((node, i) => {
    if (typeof node === "string") return false;
    const { nodeType, token } = node;
    if (nodeType === sequenceNodeType.REFERENCE) {
      const { range, sheetName } = deserializeRangeWithSheet(token);
      const on = sheetName ? workbook.getSheetBySheetName(sheetName) : sheet;
      return isDate(on, range.endRow, range.endColumn) || isDate(on, range.startRow, range.startColumn);
    }
    // Univer takes names and tables for functions without their brackets.
    if (nodeType !== sequenceNodeType.FUNCTION || nodes[i + 1] === "(" || /^(TRUE|FALSE)$/i.test(token)) return false;
    const table = placedTables(injector, workbook).find(({ name }) => token.startsWith(`${name}[`));
    if (table) {
      const columns = table.headings.flatMap((heading, c) =>
        formula.includes(`[${heading}]`) ? [table.column + c] : [],
      );
      const on = workbook.getSheetBySheetName(table.sheet);
      return columns.some((column) => isDate(on, table.row + 1, column));
    }
    const named = injector.get(IDefinedNamesService).getValueByName(workbook.getUnitId(), token)?.formulaOrRefString;
    if (named === undefined || followed.includes(token)) return true;
    return worksWithDates(injector, workbook, sheet, `=${named.replace(/^=/, "")}`, [...followed, token]);
  });
}
