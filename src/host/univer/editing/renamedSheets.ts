/** What checks and conditional formats read of a sheet goes on when that is called another way, as cells' formulas do. */

import { type IMutationInfo, type Injector, IUniverInstanceService, type Workbook } from "@univerjs/core";
import { SetWorksheetNameCommand, SheetInterceptorService } from "@univerjs/preset-sheets-core";
import { inAnyCase, renamedIn } from "../../../file/write/renames";
import { changedRules } from "./changedRules";

interface Rename {
  readonly unitId: string;
  readonly subUnitId: string;
  readonly name: string;
}

export function followRenames(injector: Injector): void {
  injector.get(SheetInterceptorService).interceptCommand({
    getMutations: ({ id, params }) =>
      id === SetWorksheetNameCommand.id ? rewritten(injector, params as Rename) : { redos: [], undos: [] },
  });
}

function rewritten(
  injector: Injector,
  { unitId, subUnitId, name }: Rename,
): { redos: IMutationInfo[]; undos: IMutationInfo[] } {
  const workbook = injector.get(IUniverInstanceService).getUnit<Workbook>(unitId);
  const old = workbook?.getSheetBySheetId(subUnitId)?.getName();
  if (old === undefined) return { redos: [], undos: [] };
  const names = inAnyCase([[old, name]]);
  const { redos, undos } = changedRules(injector, unitId, (formula) => renamedIn(formula, names));
  return { redos: [...redos], undos: [...undos] };
}
