/** Which cell an error comes from, where a formula only hands it on. */

import type { Injector, Workbook } from "@univerjs/core";
import { FormulaDataModel, IDependencyManagerService } from "@univerjs/engine-formula";
import { readCell, spilledCells } from "./cells";
import { cellKey } from "./cycles";

/** A cell with an error. */
export interface Faulty {
  readonly sheetId: string;
  readonly row: number;
  readonly column: number;
  readonly error: string;
}

const keyOf = ({ sheetId, row, column }: Omit<Faulty, "error">) => cellKey(sheetId, row, column);

/**
 * For each cell whose error another cell makes, by its key, the first one of the chain: of several, the one that
 * stands first. Errors of another kind than the cell's own are not its cause.
 */
export function originsOf(injector: Injector, workbook: Workbook): ReadonlyMap<string, Faulty> {
  const all = faultyCells(injector, workbook);
  const byKey = new Map(all.map((one) => [keyOf(one), one]));
  const makers = new Map<string, Faulty>();
  const spills = injector.get(FormulaDataModel).getArrayFormulaRange()[workbook.getUnitId()] ?? {};
  for (const [maker, users] of usersOf(injector, workbook, all)) {
    for (const user of users) {
      const { startRow, endRow, startColumn, endColumn } = spills[user.sheetId]?.[user.row]?.[user.column] ?? {
        startRow: user.row,
        endRow: user.row,
        startColumn: user.column,
        endColumn: user.column,
      };
      for (let row = startRow; row <= endRow; row++) {
        for (let column = startColumn; column <= endColumn; column++) {
          const key = cellKey(user.sheetId, row, column);
          if (byKey.get(key)?.error === maker.error && key !== keyOf(maker) && !makers.has(key)) makers.set(key, maker);
        }
      }
    }
  }
  return new Map([...makers].map(([key, maker]) => [key, firstOf(maker, makers)]));
}

function firstOf(cell: Faulty, makers: ReadonlyMap<string, Faulty>): Faulty {
  const seen = new Set<string>();
  let first = cell;
  for (let next: Faulty | undefined = cell; next && !seen.has(keyOf(next)); next = makers.get(keyOf(next))) {
    seen.add(keyOf(next));
    first = next;
  }
  return first;
}

/** All cells with an error, those that formulas spill into too, sheet by sheet and row by row. */
function faultyCells(injector: Injector, workbook: Workbook): Faulty[] {
  return workbook.getSheets().flatMap((sheet) => {
    const sheetId = sheet.getSheetId();
    const found = new Map<string, Faulty>();
    const note = (row: number, column: number, cell: Parameters<typeof readCell>[0]) => {
      const value = readCell(cell);
      if (typeof value !== "object" || value === null) return;
      found.set(cellKey(sheetId, row, column), { sheetId, row, column, error: value.error });
    };
    for (const [row, cells] of Object.entries(spilledCells(injector, sheet))) {
      for (const [column, cell] of Object.entries(cells)) note(Number(row), Number(column), cell);
    }
    sheet.getCellMatrix().forValue((row, column, cell) => note(row, column, cell));
    return [...found.values()].sort((a, b) => a.row - b.row || a.column - b.column);
  });
}

/** The cells whose formulas use each of these. */
function usersOf(injector: Injector, workbook: Workbook, cells: readonly Faulty[]) {
  if (cells.length === 0) return [];
  const dependencies = injector.get(IDependencyManagerService);
  const unitId = workbook.getUnitId();
  const formulas = new Map<number, Omit<Faulty, "error">>();
  for (const sheet of workbook.getSheets()) {
    const sheetId = sheet.getSheetId();
    sheet.getCellMatrix().forValue((row, column, cell) => {
      if (!cell?.f && !cell?.si) return;
      const id = dependencies.getFormulaDependency(unitId, sheetId, row, column);
      if (typeof id === "number") formulas.set(id, { sheetId, row, column });
    });
  }
  // Only so it finds references to single cells too.
  dependencies.openKdTree();
  const users = cells.map((cell): [Faulty, Omit<Faulty, "error">[]] => {
    const { sheetId, row, column } = cell;
    const range = { startRow: row, endRow: row, startColumn: column, endColumn: column };
    const found = dependencies.searchDependency([{ unitId, sheetId, range }]);
    return [cell, [...found].flatMap((id) => formulas.get(id) ?? [])];
  });
  dependencies.closeKdTree();
  return users;
}
