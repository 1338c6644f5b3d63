import {
  CommandType,
  type ICellData,
  ICommandService,
  type Injector,
  IUniverInstanceService,
  type Workbook,
} from "@univerjs/core";
import { type PlacedTable, readableFormula } from "./references";

/** The mutation by which Univer writes cells. */
export const SET_CELLS = "sheet.mutation.set-range-values";

/** Commands that put back or move formulas which are readable already, while headings may not stand over their columns. */
const MOVES =
  /\b(undo|redo|insert-\S*col|insert-range|remove-col|delete-range|move-(range|cols)|table-(insert|remove))/;

/**
 * Lets users type table references as they do in Excel: each formula is made readable as it goes into its cell.
 * `tablesOf` gives the tables of an open workbook as they stand.
 */
export function readTypedFormulas(injector: Injector, tablesOf: (workbook: Workbook) => readonly PlacedTable[]): void {
  const commands = injector.get(ICommandService);
  // Others may run within them: one scrolls the sheet.
  const moving = new Set<string>();
  commands.onCommandExecuted(({ id }) => void moving.delete(id));
  commands.beforeCommandExecuted(({ id, params, type }, options) => {
    if (type === CommandType.COMMAND && MOVES.test(id)) moving.add(id);
    if (id !== SET_CELLS || options?.fromFormula || moving.size > 0) return;
    const { unitId, subUnitId, cellValue } = params as Change;
    const workbook = injector.get(IUniverInstanceService).getUnit<Workbook>(unitId);
    const sheet = workbook?.getSheetBySheetId(subUnitId)?.getName();
    if (!workbook || sheet === undefined) return;
    for (const [row, cells] of Object.entries(cellValue ?? {})) {
      for (const [column, cell] of Object.entries(cells)) {
        if (!cell?.f?.includes("[")) continue;
        const place = { sheet, row: Number(row), column: Number(column) };
        cell.f = readableFormula(cell.f, place, tablesOf(workbook));
      }
    }
  });
}

export interface Change {
  readonly unitId: string;
  readonly subUnitId: string;
  readonly cellValue?: Record<number, Record<number, ICellData | null>>;
}
