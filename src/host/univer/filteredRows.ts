/** Which rows filters hide, also on sheets that nobody has looked at yet, for which Univer works it out only then. */

import { type Injector, IResourceManagerService, type Workbook } from "@univerjs/core";
import { INTERCEPTOR_POINT, SheetInterceptorService } from "@univerjs/preset-sheets-core";
import { TableManager } from "@univerjs/preset-sheets-table";
import { RESOURCES } from "./file/codes";
import type { FiltersJson } from "./file/filterResource";

export function knowFilteredRows(injector: Injector): void {
  const tables = injector.get(TableManager);
  const waiting = waitingFilters(injector);
  injector.get(SheetInterceptorService).intercept(INTERCEPTOR_POINT.ROW_FILTERED, {
    // Before the plugins, which have the last word.
    priority: 200,
    handler: (filtered, { workbook, unitId, subUnitId, row }, next) =>
      filtered ||
      tables
        .getTablesBySubunitId(unitId, subUnitId)
        .some((table) => table.getTableFilters().getFilterOutRows()?.has(row)) ||
      waiting(workbook, subUnitId, row) ||
      Boolean(next(filtered)),
  });
}

type Hides = (workbook: Workbook, sheetId: string, row: number) => boolean;

/** What the filters of sheets hide, as long as the plugin that knows them has not loaded. */
function waitingFilters(injector: Injector): Hides {
  const resources = injector.get(IResourceManagerService);
  const isTheirs = ({ pluginName }: { readonly pluginName: string }) => pluginName === RESOURCES.filters;
  let isThere = resources.getAllResourceHooks().some(isTheirs);
  resources.register$.subscribe((hook) => {
    isThere ||= isTheirs(hook);
  });
  const read = new WeakMap<Workbook, ReadonlyMap<string, ReadonlySet<number>>>();
  return (workbook, sheetId, row) => {
    if (isThere) return false;
    const hidden = read.get(workbook) ?? hiddenBy(workbook);
    read.set(workbook, hidden);
    return hidden.get(sheetId)?.has(row) ?? false;
  };
}

function hiddenBy(workbook: Workbook): ReadonlyMap<string, ReadonlySet<number>> {
  const { data } = workbook.getSnapshot().resources?.find(({ name }) => name === RESOURCES.filters) ?? {};
  const filters: FiltersJson = data ? JSON.parse(data) : {};
  return new Map(Object.entries(filters).map(([id, { cachedFilteredOut = [] }]) => [id, new Set(cachedFilteredOut)]));
}
