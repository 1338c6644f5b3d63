import {
  type Injector,
  IResourceManagerService,
  type IWorkbookData,
  UniverInstanceType,
  type Workbook,
} from "@univerjs/core";
import { ASIDE } from "./file/cellData";

/**
 * The data of an open workbook, with all that plugins hold of it: its own data, not a copy, so only to be read. Once the
 * workbook is left it stays as it was.
 * What is meant for a plugin that has not loaded yet stays in it as the workbook brought it.
 */
export function snapshotOf(injector: Injector, workbook: Workbook): Readonly<IWorkbookData> {
  const snapshot = workbook.getSnapshot();
  const held = injector
    .get(IResourceManagerService)
    .getResources(workbook.getUnitId(), UniverInstanceType.UNIVER_SHEET);
  const names = new Set(held.map(({ name }) => name));
  const waiting = (snapshot.resources ?? []).filter(({ name }) => !names.has(name));
  // A workbook that is left empties its own list of sheets.
  return { ...snapshot, sheetOrder: [...snapshot.sheetOrder], resources: [...held, ...waiting] };
}

/** The same, with the sheet that is shown noted as the one to show when it is opened again. */
export function snapshotAsShown(injector: Injector, workbook: Workbook): Readonly<IWorkbookData> {
  const snapshot = snapshotOf(injector, workbook);
  const active = workbook.getActiveSheet(true)?.getSheetId();
  return active ? { ...snapshot, custom: { ...snapshot.custom, [ASIDE]: { active } } } : snapshot;
}
