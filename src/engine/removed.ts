import type { ICommandInfo, Injector } from "@univerjs/core";
import { IActiveDirtyManagerService, RemoveDefinedNameMutation } from "@univerjs/engine-formula";

/** The mutation by which Univer takes a sheet away. */
const REMOVE_SHEET = "sheet.mutation.remove-sheet";

/** The mutation by which it calls a sheet another way. */
const RENAME_SHEET = "sheet.mutation.set-worksheet-name";

/**
 * Has all worked out anew when a sheet or a name was removed, or a sheet renamed. What a formula finds of a sheet may be
 * known only when it is worked out, and the engine would take a sheet that was just removed for a blank one of that
 * name. A formula with a name that nothing is called by any more it would not work out at all, nor one that has a
 * sheet's name in a text.
 */
export function forgetRemoved(injector: Injector): void {
  const dirty = injector.get(IActiveDirtyManagerService);
  dirty.register(REMOVE_SHEET, {
    commandId: REMOVE_SHEET,
    getDirtyData: ({ params }: ICommandInfo) => {
      const { unitId, subUnitId } = params as { unitId: string; subUnitId: string };
      return { forceCalculation: true, clearDependencyTreeCache: { [unitId]: { [subUnitId]: "1" } } };
    },
  });
  for (const commandId of [RemoveDefinedNameMutation.id, RENAME_SHEET]) {
    dirty.register(commandId, { commandId, getDirtyData: () => ({ forceCalculation: true }) });
  }
}
