import { ICommandService, type Injector } from "@univerjs/core";
import { IFunctionService, RemoveSuperTableMutation, SetSuperTableMutation } from "@univerjs/engine-formula";

/**
 * The engine keeps the formulas it parsed with the rows that their tables had then. When a table has changed it parses
 * them anew once, but keeps the old ones, and the next edit would be worked out without the new rows.
 */
export function parseAnewWithTables(injector: Injector): void {
  injector.get(ICommandService).onCommandExecuted(({ id, params }) => {
    if (id !== SetSuperTableMutation.id && id !== RemoveSuperTableMutation.id) return;
    const { tableName } = params as { tableName: string };
    // A table's name may be written in small letters; then the bracket after it tells.
    injector.get(IFunctionService).deleteFormulaAstCacheKey(tableName, "[");
  });
}
