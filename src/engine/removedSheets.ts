import type { ICommandInfo, Injector } from "@univerjs/core";
import { IActiveDirtyManagerService } from "@univerjs/engine-formula";

/** The mutation by which Univer takes a sheet away. */
const REMOVE_SHEET = "sheet.mutation.remove-sheet";

/**
 * What a formula finds of another sheet may be known only when it is worked out, and the engine would take a sheet that
 * was just removed for a blank one of that name: all is worked out anew, without it.
 */
export function forgetRemovedSheets(injector: Injector): void {
  injector.get(IActiveDirtyManagerService).register(REMOVE_SHEET, {
    commandId: REMOVE_SHEET,
    getDirtyData: ({ params }: ICommandInfo) => {
      const { unitId, subUnitId } = params as { unitId: string; subUnitId: string };
      return { forceCalculation: true, clearDependencyTreeCache: { [unitId]: { [subUnitId]: "1" } } };
    },
  });
}
