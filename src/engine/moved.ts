import { type ICommandInfo, type Injector, type IRange, IUniverInstanceService, type Workbook } from "@univerjs/core";
import { IActiveDirtyManagerService } from "@univerjs/engine-formula";

/** The mutations by which Univer puts rows and columns in and takes them away. */
const LINES = ["insert-row", "insert-col", "remove-rows", "remove-col"].map((name) => `sheet.mutation.${name}`);

/**
 * Has all worked out anew that looks at cells behind rows and columns that came or went. The engine would do so only
 * where a formula's text changes: what a formula finds by a text or by counting stays where it is, over other cells.
 */
export function lookAtMoved(injector: Injector): void {
  const dirty = injector.get(IActiveDirtyManagerService);
  for (const commandId of LINES) {
    const own = dirty.get(commandId);
    dirty.register(commandId, {
      commandId,
      getDirtyData: (command) => {
        const data = own?.getDirtyData(command) ?? {};
        return { ...data, dirtyRanges: [...(data.dirtyRanges ?? []), ...behind(injector, command)] };
      },
    });
  }
}

function behind(injector: Injector, { id, params }: ICommandInfo) {
  const { unitId, subUnitId, range } = params as { unitId: string; subUnitId: string; range: IRange };
  const sheet = injector.get(IUniverInstanceService).getUnit<Workbook>(unitId)?.getSheetBySheetId(subUnitId);
  if (!sheet) return [];
  // A table without rows is taken for one that ends in its heading, before the rows that were removed.
  const from = id.includes("row")
    ? { startRow: Math.max(0, range.startRow - 1), startColumn: 0 }
    : { startRow: 0, startColumn: range.startColumn };
  const to = { endRow: sheet.getRowCount() - 1, endColumn: sheet.getColumnCount() - 1 };
  return [{ unitId, sheetId: subUnitId, range: { ...from, ...to } }];
}
