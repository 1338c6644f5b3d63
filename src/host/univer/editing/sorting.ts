/** Sorting moves the rows of cells as they are; here their formulas are kept right, and their notes go along. */

import {
  AbsoluteRefType,
  CustomCommandExecutionError,
  type ICellData,
  ICommandService,
  type Injector,
  type IRange,
  IUniverInstanceService,
  type Workbook,
  type Worksheet,
} from "@univerjs/core";
import {
  deserializeRangeWithSheet,
  FormulaDataModel,
  generateStringWithSequence,
  LexerTreeBuilder,
  sequenceNodeType,
} from "@univerjs/engine-formula";
import { ReorderRangeCommand, SetRangeValuesMutation, SheetInterceptorService } from "@univerjs/preset-sheets-core";
import { columnLetters } from "../../../sheet/columnLetters";
import type { Consequence } from "./edits";
import { movedNotes } from "./movedNotes";

export interface Reorder {
  readonly unitId: string;
  readonly subUnitId: string;
  readonly range: IRange;
  /** For each row that takes another's cells, that other row. */
  readonly order: Readonly<Record<number, number>>;
}

type CellRows = Record<number, Record<number, ICellData>>;

/** Lets the formulas of rows that are sorted go on referring to their own rows, and their notes move with them. */
export function sortWhole(injector: Injector): void {
  injector.get(SheetInterceptorService).interceptCommand({
    getMutations: ({ id, params }) => {
      if (id !== ReorderRangeCommand.id) return { redos: [], undos: [] };
      const { unitId, subUnitId } = params as Reorder;
      const sheet = injector.get(IUniverInstanceService).getUnit<Workbook>(unitId)?.getSheetBySheetId(subUnitId);
      if (!sheet) return { redos: [], undos: [] };
      const { preRedos, redos, undos } = reordered(injector, sheet, params as Reorder);
      const notes = movedNotes(injector, params as Reorder);
      return { preRedos, redos: [...redos, ...notes.redos], undos: [...notes.undos, ...undos] };
    },
  });
}

/** Refuses to sort cells that a formula of several cells fills, or that are merged; says which. */
export function refuseSorting(injector: Injector, say: (words: string) => void): void {
  injector.get(ICommandService).beforeCommandExecuted(({ id, params }) => {
    if (id !== "sheet.command.sort-range") return;
    const { unitId, subUnitId, range } = params as Reorder;
    const sheet = injector.get(IUniverInstanceService).getUnit<Workbook>(unitId)?.getSheetBySheetId(subUnitId);
    const refusal = sheet ? whyNot(injector, sheet, range) : "";
    if (!refusal) return;
    say(refusal);
    throw new CustomCommandExecutionError(refusal);
  });
}

function whyNot(injector: Injector, sheet: Worksheet, range: IRange): string {
  const spills = injector.get(FormulaDataModel).getArrayFormulaRange()[sheet.getUnitId()]?.[sheet.getSheetId()] ?? {};
  for (const [row, columns] of Object.entries(spills)) {
    for (const [column, area] of Object.entries(columns ?? {})) {
      if (!area || !crosses(area as IRange, range)) continue;
      return `Not sorted: the formula in ${columnLetters(Number(column))}${Number(row) + 1} fills several cells of these rows. Leave them out of what is sorted.`;
    }
  }
  const merged = sheet.getMergeData().find((area) => crosses(area, range));
  if (!merged) return "";
  return `Not sorted: ${columnLetters(merged.startColumn)}${merged.startRow + 1} is merged with other cells. Separate them first.`;
}

const crosses = (a: IRange, b: IRange): boolean =>
  a.startRow <= b.endRow && a.endRow >= b.startRow && a.startColumn <= b.endColumn && a.endColumn >= b.startColumn;

/** Formulas as they have to stand once the rows have changed places, and as they stood. */
function reordered(injector: Injector, sheet: Worksheet, { range, order }: Reorder) {
  const formulas = injector.get(FormulaDataModel);
  const cells = sheet.getCellMatrix();
  const text = (row: number, column: number) =>
    formulas.getFormulaStringByCell(row, column, sheet.getSheetId(), sheet.getUnitId());
  const before: CellRows = {};
  const after: CellRows = {};
  const shared = new Set<string>();
  for (const [to, from] of Object.entries(order)) {
    for (let column = range.startColumn; column <= range.endColumn; column++) {
      const cell = cells.getValue(from, column);
      const formula = cell?.f || cell?.si ? text(from, column) : null;
      if (!formula) continue;
      if (cell?.si) shared.add(cell.si);
      put(before, from, column, { f: cell?.f ?? null, si: cell?.si ?? null });
      const moved = movedWithRow(injector.get(LexerTreeBuilder), formula, sheet.getName(), Number(to) - from, range);
      put(after, Number(to), column, { f: moved, si: null });
    }
  }
  // A formula that several cells share is told from where it stands: it gets a text of its own in each of them.
  const plain: CellRows = {};
  if (shared.size > 0) {
    cells.forValue((row, column, cell) => {
      if (!cell?.si || !shared.has(cell.si)) return;
      put(plain, row, column, { f: text(row, column) ?? null, si: null });
      put(before, row, column, { f: cell.f ?? null, si: cell.si });
    });
  }
  const write = (cellValue: CellRows): Consequence["redos"] =>
    Object.keys(cellValue).length > 0
      ? [
          {
            id: SetRangeValuesMutation.id,
            params: { unitId: sheet.getUnitId(), subUnitId: sheet.getSheetId(), cellValue },
          },
        ]
      : [];
  return { preRedos: [...write(plain)], redos: [...write(after)], undos: [...write(before)] };
}

function put(rows: CellRows, row: number, column: number, cell: ICellData): void {
  rows[row] ??= {};
  (rows[row] as Record<number, ICellData>)[column] = cell;
}

/**
 * A formula whose row moves by so many rows while its range is sorted. What it refers to in a sorted row moves along;
 * so does the open end of a range that begins at a fixed cell. What stands outside of the sorted rows stays, and so
 * does a range over several of them: all of them are still there.
 */
export function movedWithRow(
  lexer: LexerTreeBuilder,
  formula: string,
  sheet: string,
  by: number,
  sorted: Pick<IRange, "startRow" | "endRow">,
): string {
  if (by === 0) return formula;
  const nodes = lexer.sequenceNodesBuilder(formula);
  if (!nodes) return formula;
  const moved = nodes.map((node) => {
    if (typeof node === "string" || node.nodeType !== sequenceNodeType.REFERENCE) return node;
    const { range, sheetName } = deserializeRangeWithSheet(node.token);
    const isInside = range.startRow >= sorted.startRow && range.endRow <= sorted.endRow;
    if ((sheetName && sheetName !== sheet) || !isInside) return node;
    const isFixed = (type: AbsoluteRefType | undefined) => type === AbsoluteRefType.ROW || type === AbsoluteRefType.ALL;
    const oneEndFixed = isFixed(range.startAbsoluteRefType) !== isFixed(range.endAbsoluteRefType);
    if (range.startRow !== range.endRow && !oneEndFixed) return node;
    return { ...node, token: lexer.moveFormulaRefOffset(`=${node.token}`, 0, by).slice(1) };
  });
  return `=${generateStringWithSequence(moved)}`;
}
