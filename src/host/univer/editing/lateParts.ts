import { type Injector, IResourceManagerService } from "@univerjs/core";

/** What a part of the spreadsheet that loads late holds for a workbook, by sheets: it is asked by its name. */
export function heldBy<T>(injector: Injector, resource: string, unitId: string): Readonly<Record<string, T>> {
  const part = injector
    .get(IResourceManagerService)
    .getAllResourceHooks()
    .find((one) => one.pluginName === resource);
  const json = part?.toJson(unitId);
  return json ? (JSON.parse(json) as Record<string, T>) : {};
}
