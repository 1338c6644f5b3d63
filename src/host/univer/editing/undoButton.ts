/** The undo and redo buttons say what they would take back or do again. */

import {
  ICommandService,
  type Injector,
  type IUndoRedoItem,
  IUndoRedoService,
  type Nullable,
  RedoCommand,
  UndoCommand,
} from "@univerjs/core";
import {
  ComponentManager,
  IMenuManagerService,
  IShortcutService,
  MenuItemType,
  SetWorksheetActiveOperation,
} from "@univerjs/preset-sheets-core";
import { createElement, useSyncExternalStore } from "react";
import type { Edit } from "./edits";
import { shown, type Words } from "./undoWords";

/** The buttons' words, by the step that is on top of each list. */
export class UndoButtons {
  readonly #words = new WeakMap<object, Words>();
  readonly #listeners = new Set<() => void>();

  constructor(private readonly injector: Injector) {
    const steps = injector.get(IUndoRedoService);
    steps.undoRedoStatus$.subscribe(() => this.#changed());
    injector.get(ICommandService).onCommandExecuted(({ id }) => {
      if (id === SetWorksheetActiveOperation.id) this.#changed();
    });
    this.#replace(UndoCommand.id, "Undo", "UndoIcon", () => steps.pitchTopUndoElement());
    this.#replace(RedoCommand.id, "Redo", "RedoIcon", () => steps.pitchTopRedoElement());
  }

  note(edit: Edit, words: Words): void {
    this.#words.set(edit, words);
    this.#changed();
  }

  #changed(): void {
    for (const listener of this.#listeners) listener();
  }

  /** Puts words of ours in the place of the button's fixed ones. */
  #replace(command: string, verb: string, icon: string, top: () => Nullable<IUndoRedoItem>): void {
    const components = this.injector.get(ComponentManager);
    const menus = this.injector.get(IMenuManagerService);
    const shortcut = this.injector.get(IShortcutService).getShortcutDisplayOfCommand(command);
    const label = () => {
      const item = top();
      const what = item ? shown(this.injector, item.unitID, this.#words.get(item)) : "";
      return `${verb}${what && ` ${what}`}${shortcut ? ` (${shortcut})` : ""}`;
    };
    const subscribe = (listener: () => void) => {
      this.#listeners.add(listener);
      return () => this.#listeners.delete(listener);
    };
    const Label = () => {
      const words = useSyncExternalStore(subscribe, label);
      const Icon = components.get(icon);
      return createElement("span", { role: "img", "aria-label": words, title: words }, Icon && createElement(Icon));
    };
    components.register(`pourwright.${verb}`, Label);
    const item = menus.getFlatMenuByPositionKey("ribbon.start.history").find(({ key }) => key === command)?.item;
    if (!item) return;
    menus.mergeMenu({
      "ribbon.start.history": {
        [command]: {
          order: verb === "Undo" ? 0 : 1,
          menuItemFactory: () => ({
            id: command,
            type: MenuItemType.BUTTON,
            icon,
            label: `pourwright.${verb}`,
            // It would stand beside the picture.
            title: "",
            tooltip: "",
            ...(item.disabled$ && { disabled$: item.disabled$ }),
          }),
        },
      },
    });
  }
}
