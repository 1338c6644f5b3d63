import {
  CustomCommandExecutionError,
  ICommandService,
  type Injector,
  IPermissionService,
  IUniverInstanceService,
  UniverInstanceType,
  type Workbook,
} from "@univerjs/core";
import { SetCellEditVisibleOperation, WorkbookEditablePermission } from "@univerjs/preset-sheets-core";
import { changeBy } from "./changes";

/** The id of the workbook that may only be looked at, by the spreadsheet. Univer's own permission is set anew at times. */
const shown = new WeakMap<Injector, string>();

/** Refuses in words what the pane would change in a workbook that may only be looked at. */
export function refuseReadOnly(injector: Injector, unitId: string): void {
  if (shown.get(injector) !== unitId) return;
  throw new Error("Here this workbook can only be looked at: another tab has it. Nothing has changed.");
}

/** Lets the open workbook only be looked at. */
export class ReadOnly {
  readonly #injector: Injector;
  readonly #refused = new Set<() => void>();
  /** The id of the workbook that may not be changed. */
  #unit = "";

  constructor(injector: Injector) {
    this.#injector = injector;
    // Univer's own permission takes the editor and the menus away, but not every command asks for it.
    injector.get(ICommandService).beforeCommandExecuted((command, options) => {
      if (!this.#unit) return;
      const { unitId, visible } = (command.params ?? {}) as { unitId?: string; visible?: boolean };
      // Whoever types should learn at the first letter that it is in vain.
      const isTyping = command.id === SetCellEditVisibleOperation.id && visible;
      const isEdit = unitId === this.#unit && changeBy(command, options)?.isEdit;
      if (!isTyping && !isEdit) return;
      for (const callback of this.#refused) callback();
      throw new CustomCommandExecutionError("the workbook is only shown");
    });
  }

  set(on: boolean): void {
    const workbook = this.#injector
      .get(IUniverInstanceService)
      .getCurrentUnitOfType<Workbook>(UniverInstanceType.UNIVER_SHEET);
    if (!workbook) return;
    this.#unit = on ? workbook.getUnitId() : "";
    shown.set(this.#injector, this.#unit);
    const permissions = this.#injector.get(IPermissionService);
    const point = new WorkbookEditablePermission(workbook.getUnitId());
    if (!permissions.getPermissionPoint(point.id)) permissions.addPermissionPoint(point);
    permissions.updatePermissionPoint(point.id, !on);
  }

  /** Calls back when a change was refused. */
  onRefused(callback: () => void): () => void {
    this.#refused.add(callback);
    return () => this.#refused.delete(callback);
  }
}
