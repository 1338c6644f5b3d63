/** A formula in a cell of dates: what it gives is shown as a date, even where it is no day but a weight or a price. */

import { type Injector, IUniverInstanceService, type Workbook, type Worksheet } from "@univerjs/core";
import { deserializeRangeWithSheet, LexerTreeBuilder, sequenceNodeType } from "@univerjs/engine-formula";
import { getPatternType } from "@univerjs/preset-sheets-core";
import { cellName } from "../../../engine/problems";
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

/** Also where it cannot be told, as with names. */
function worksWithDates(injector: Injector, workbook: Workbook, sheet: Worksheet, formula: string): boolean {
  if (MAKES_DATES.test(formula)) return true;
  const nodes = injector.get(LexerTreeBuilder).sequenceNodesBuilder(formula) ?? [];
  return nodes.some((node) => {
    if (typeof node === "string") return false;
    if (node.nodeType === sequenceNodeType.DEFINED_NAME || node.nodeType === sequenceNodeType.TABLE) return true;
    if (node.nodeType !== sequenceNodeType.REFERENCE) return false;
    const { range, sheetName } = deserializeRangeWithSheet(node.token);
    const on = sheetName ? workbook.getSheetBySheetName(sheetName) : sheet;
    return !on || showsDate(on, range.endRow, range.endColumn) || showsDate(on, range.startRow, range.startColumn);
  });
}
