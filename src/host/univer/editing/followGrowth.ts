/** What follows in the rest of the workbook when a table ends further down. */

import { type Injector, type IRange, IUniverInstanceService, type Workbook, type Worksheet } from "@univerjs/core";
import { InsertRowMutation, MoveRangeMutation } from "@univerjs/preset-sheets-core";
import { SetSheetTableMutation } from "@univerjs/preset-sheets-table";
import { type Consequence, type Edit, joined } from "./edits";
import { extendReferences } from "./extendReferences";
import { extendRules } from "./extendRules";

interface Resize {
  readonly subUnitId: string;
  readonly tableId: string;
  readonly config: { readonly updateRange?: { readonly newRange: IRange } };
}

/** @param table its range as it was */
export const followGrowth = (injector: Injector, sheet: Worksheet, table: IRange, endRow: number): Consequence | null =>
  joined(extendRules(injector, sheet, table, endRow), extendReferences(injector, sheet, table, endRow));

/** For tables that were made longer by themselves, as the pane does; rows put in between carry all along already. */
export function followResize(injector: Injector, { unitID, redoMutations, undoMutations }: Edit): Consequence | null {
  if (redoMutations.some(({ id }) => id === InsertRowMutation.id || id === MoveRangeMutation.id)) return null;
  const sizes = (mutations: Edit["redoMutations"]) =>
    mutations.filter(({ id }) => id === SetSheetTableMutation.id).map(({ params }) => params as Resize);
  let all: Consequence | null = null;
  for (const { subUnitId, tableId, config } of sizes(redoMutations)) {
    const now = config.updateRange?.newRange;
    const was = sizes(undoMutations).find((one) => one.tableId === tableId)?.config.updateRange?.newRange;
    const sheet = injector.get(IUniverInstanceService).getUnit<Workbook>(unitID)?.getSheetBySheetId(subUnitId);
    if (!now || !was || !sheet || now.startRow !== was.startRow || now.endRow <= was.endRow) continue;
    all = joined(all, followGrowth(injector, sheet, was, now.endRow));
  }
  return all;
}
