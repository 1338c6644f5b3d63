/** A duplicate of a sheet has its conditional formats in the order of the sheet: the first is the one that wins. */

import type { Injector } from "@univerjs/core";
import { AddConditionalRuleMutation } from "@univerjs/preset-sheets-conditional-formatting";
import { CopySheetCommand, SheetInterceptorService } from "@univerjs/preset-sheets-core";

/** Univer adds them first to last, and puts each before those that are there. */
export function keepOrderOfRules(injector: Injector): void {
  const interceptors = injector.get(SheetInterceptorService);
  const collect = interceptors.onCommandExecute.bind(interceptors);
  interceptors.onCommandExecute = (command) => {
    const found = collect(command);
    if (command.id !== CopySheetCommand.id) return found;
    const isRule = ({ id }: { id: string }) => id === AddConditionalRuleMutation.id;
    const lastFirst = found.redos.filter(isRule).reverse();
    return { ...found, redos: [...found.redos.filter((one) => !isRule(one)), ...lastFirst] };
  };
}
