import { ICommandService, type Injector } from "@univerjs/core";
import {
  IFunctionService,
  RemoveDefinedNameMutation,
  RemoveSuperTableMutation,
  SetDefinedNameMutation,
  SetSuperTableMutation,
} from "@univerjs/engine-formula";

/**
 * The engine keeps the formulas it parsed with the rows that their tables had then, and with what names meant. When a
 * table or a name has changed it parses them anew once, but keeps the old ones, and the next edit would be worked out
 * without the new rows.
 */
export function parseAnew(injector: Injector): void {
  const forget = (part: string) => injector.get(IFunctionService).deleteFormulaAstCacheKey(part);
  injector.get(ICommandService).onCommandExecuted(({ id, params }) => {
    if (id === SetSuperTableMutation.id || id === RemoveSuperTableMutation.id) {
      forget((params as { tableName: string }).tableName);
      // A table's name may be written in small letters; then the bracket after it tells.
      forget("[");
    } else if (id === SetDefinedNameMutation.id || id === RemoveDefinedNameMutation.id) {
      forget((params as { name: string }).name);
    }
  });
}
