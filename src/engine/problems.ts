/** The cells of a workbook whose formulas are at fault, with the words that say what to fix. */

import {
  type ICellData,
  ICommandService,
  type Injector,
  IUniverInstanceService,
  type Nullable,
  type Workbook,
  type Worksheet,
} from "@univerjs/core";
import {
  FormulaDataModel,
  IFunctionService,
  LexerTreeBuilder,
  SetFormulaCalculationResultMutation,
  sequenceNodeType,
} from "@univerjs/engine-formula";
import { columnLetters } from "../sheet/columnLetters";
import { readCell, spilledCells } from "./cells";
import { cellKey, cyclesOf } from "./cycles";
import { NAMESPACE } from "./functions";
import { originsOf } from "./origins";
import type { FormulaPlace, PlacedTable } from "./references";
import { tableFault } from "./tableFaults";

export interface Problem {
  readonly sheet: string;
  /** From 0. */
  readonly row: number;
  /** From 0. */
  readonly column: number;
  /** Such as `#VALUE!`. */
  readonly error: string;
  /** What to fix; where the function said nothing, what such an error means. */
  readonly message: string;
  /** Whether the fault is in this cell: an error that a formula only hands on is not listed. */
  readonly own: boolean;
  /** The cell that the error comes from, where this one only hands it on. */
  readonly from?: FormulaPlace;
}

const CYCLE = "#CYCLE!";

const MEANINGS: Readonly<Record<string, string>> = {
  [CYCLE]: "this formula refers to itself, perhaps through other cells; let it begin from a number that you type",
  "#DIV/0!": "this formula, or a cell it uses, divides by zero or by a blank cell",
  "#N/A": "no such value was found, or a cell that this one uses has no answer",
  "#NAME?": "a name in this formula, or in a cell it uses, is unknown; check how it is written",
  "#NUM!": "this formula, or a cell it uses, has a number that is too large or has no answer",
  "#REF!": "this formula, or a cell it uses, refers to a cell that is no longer there",
  "#SPILL!":
    "the results need the cells to the right and below; clear what stands in them, or insert rows or columns where the sheet ends before them",
  "#VALUE!": "a cell that this one uses has an error, or holds a value of the wrong kind",
};

/** All error cells and all formulas that refer to themselves, sheet by sheet and row by row. */
export function problemsOf(injector: Injector, workbook: Workbook, tables: readonly PlacedTable[] = []): Problem[] {
  const all = withoutOrigins(injector, workbook, tables);
  if (all.every(({ own }) => own)) return all;
  const origins = originsOf(injector, workbook);
  const placeOf = (key: string) => {
    const origin = origins.get(key);
    const sheet = origin && workbook.getSheetBySheetId(origin.sheetId)?.getName();
    return sheet === undefined ? undefined : { sheet, row: origin?.row ?? 0, column: origin?.column ?? 0 };
  };
  return all.map((problem) => {
    if (problem.own) return problem;
    const sheetId = workbook.getSheetBySheetName(problem.sheet)?.getSheetId() ?? "";
    const from = placeOf(cellKey(sheetId, problem.row, problem.column));
    if (!from) return problem;
    const cause = all.find(
      ({ sheet, row, column }) => sheet === from.sheet && row === from.row && column === from.column,
    );
    const message = cause?.message ?? "an error is written there; write a value";
    return { ...problem, from, message: `comes from ${from.sheet}!${cellName(from)}: ${message}` };
  });
}

/** A cell's name, such as B4. */
export const cellName = ({ row, column }: { readonly row: number; readonly column: number }): string =>
  `${columnLetters(column)}${row + 1}`;

function withoutOrigins(injector: Injector, workbook: Workbook, tables: readonly PlacedTable[]): Problem[] {
  const cycles = cyclesOf(injector, workbook);
  return workbook.getSheets().flatMap((sheet) => {
    const found = new Map<string, Problem>();
    const spilled = new Set<string>();
    const note = (row: number, column: number, cell: Nullable<ICellData>) => {
      const isCycle = cycles.has(cellKey(sheet.getSheetId(), row, column));
      const value = isCycle ? { error: CYCLE, message: MEANINGS[CYCLE] as string } : readCell(cell);
      if (typeof value !== "object" || value === null) return;
      const formula = () => formulaOf(injector, sheet, row, column);
      const place = { sheet: sheet.getName(), row, column };
      const own =
        value.message ||
        (value.error === "#NAME?" ? misspelt(injector, formula()) : "") ||
        (tables.length > 0 ? tableFault(formula(), value.error, place, tables) : "");
      found.set(`${row},${column}`, {
        ...place,
        error: value.error,
        message: own || (MEANINGS[value.error] ?? "this formula has no answer"),
        own: own !== "" || value.error === "#SPILL!",
      });
    };
    for (const [row, cells] of Object.entries(spilledCells(injector, sheet))) {
      for (const [column, cell] of Object.entries(cells)) note(Number(row), Number(column), cell);
    }
    // One wrong argument speaks from each cell that a formula spills into; once is enough in the list.
    for (const [place, problem] of found) {
      if (spilled.has(problem.message)) found.set(place, { ...problem, own: false });
      spilled.add(problem.message);
    }
    sheet.getCellMatrix().forValue((row, column, cell) => {
      if (cell?.f || cell?.si) note(row, column, cell);
    });
    return [...found.values()].sort((a, b) => a.row - b.row || a.column - b.column);
  });
}

/** Also of a cell that shares its formula with others. */
const formulaOf = (injector: Injector, sheet: Worksheet, row: number, column: number): string =>
  injector.get(FormulaDataModel).getFormulaStringByCell(row, column, sheet.getSheetId(), sheet.getUnitId()) ?? "";

/** What to fix in a formula that calls a function of ours by a wrong name; empty when it calls none such. */
function misspelt(injector: Injector, formula: string): string {
  const functions = injector.get(IFunctionService);
  for (const node of injector.get(LexerTreeBuilder).sequenceNodesBuilder(formula) ?? []) {
    if (typeof node === "string" || node.nodeType !== sequenceNodeType.FUNCTION) continue;
    const name = node.token.trim().toUpperCase();
    if (functions.hasExecutor(name)) continue;
    if (functions.hasExecutor(`${NAMESPACE}.${name}`)) return `write ${NAMESPACE}.${name}`;
    if (name.startsWith(`${NAMESPACE}.`)) return `there is no ${name}; type =${NAMESPACE}. to see the functions`;
  }
  return "";
}

/**
 * Our functions leave the message of an error in the cell, where it moves along with it. Univer would also leave it
 * there when the cell's next result has none, so each result without a message is made to take away the old one.
 */
export function forgetOldMessages(injector: Injector): void {
  injector.get(ICommandService).beforeCommandExecuted(({ id, params }) => {
    if (id !== SetFormulaCalculationResultMutation.id) return;
    const { unitData } = params as { unitData: Record<string, Record<string, CellRows | null> | null> };
    for (const [unitId, sheets] of Object.entries(unitData)) {
      const workbook = injector.get(IUniverInstanceService).getUnit<Workbook>(unitId);
      for (const [sheetId, rows] of Object.entries(sheets ?? {})) {
        const matrix = workbook?.getSheetBySheetId(sheetId)?.getCellMatrix();
        for (const [row, cells] of Object.entries(rows ?? {})) {
          for (const [column, cell] of Object.entries(cells)) {
            if (!cell) continue;
            const before = matrix?.getValue(Number(row), Number(column));
            // A result brings the number format of the cells it came from: that is for a formula just typed only.
            if (before?.v !== undefined && before.v !== null) delete cell.s;
            const { message: _, ...others } = before?.custom ?? {};
            const custom = { ...others, ...cell.custom };
            cell.custom = Object.keys(custom).length > 0 ? custom : null;
          }
        }
      }
    }
  });
}

type CellRows = Record<number, Record<number, ICellData | null>>;
