import { ICommandService, type Injector, IUniverInstanceService, type Workbook } from "@univerjs/core";
import { type Change, SET_CELLS } from "./typing";

/** What a formula came to is written a moment after it was worked out: a cell that holds none by then keeps what it holds. */
export function dropLateResults(injector: Injector): void {
  injector.get(ICommandService).beforeCommandExecuted(({ id, params }, options) => {
    if (id !== SET_CELLS || !options?.applyFormulaCalculationResult) return;
    const { unitId, subUnitId, cellValue } = params as Change;
    const sheet = injector.get(IUniverInstanceService).getUnit<Workbook>(unitId)?.getSheetBySheetId(subUnitId);
    if (!sheet) return;
    for (const [row, cells] of Object.entries(cellValue ?? {})) {
      for (const column of Object.keys(cells)) {
        const cell = sheet.getCellRaw(Number(row), Number(column));
        if (!cell?.f && !cell?.si) delete cells[Number(column)];
      }
    }
  });
}
