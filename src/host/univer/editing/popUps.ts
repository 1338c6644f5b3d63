/** The lists and panels that open at a cell, by keys: Alt and an arrow opens what the cell has, Escape closes it. */

import { ICommandService, IContextService, type Injector } from "@univerjs/core";
import { ILayoutService, KeyCode, MetaKeys } from "@univerjs/preset-sheets-core";
import { TableManager } from "@univerjs/preset-sheets-table";
import { keyAdder } from "./keys";
import type { Selected } from "./selected";
import { whenThere } from "./whenThere";

const SHOW_LIST = "sheet.operation.show-data-validation-dropdown";
const HIDE_LIST = "sheet.operation.hide-data-validation-dropdown";
const OPEN_FILTER = "sheet.operation.open-table-filter-panel";
const CLOSE_FILTER = "sheet.operation.close-filter-panel";
/** The state by which the table plugin knows that its panel is open. */
const TABLE_FILTER_OPEN = "SHEETS_TABLE_FILTER_PANEL_OPENED_KEY";

export function addPopUpKeys(injector: Injector): void {
  keyAdder(injector)("open-list", [KeyCode.ARROW_DOWN | MetaKeys.ALT], (at) => open(injector, at));
  // They stand outside of the spreadsheet's own element.
  document.addEventListener("keydown", (event) => {
    const popUp = event.target instanceof Element && event.target.closest("[data-u-comp=rect-popup]");
    if (!popUp) return;
    const list = popUp.querySelector<HTMLElement>("[data-u-comp=sheets-dropdown-list]");
    if (event.key === "Escape") {
      close(injector);
      event.preventDefault();
    } else if (list) goThrough(list, event);
  });
}

function close(injector: Injector): void {
  const commands = injector.get(ICommandService);
  for (const id of [HIDE_LIST, CLOSE_FILTER]) if (commands.hasCommand(id)) commands.syncExecuteCommand(id, {});
  injector.get(IContextService).setContextValue(TABLE_FILTER_OPEN, false);
  injector.get(ILayoutService).focus();
}

const choicesOf = (list: HTMLElement): HTMLElement[] => [...(list.lastElementChild?.children ?? [])] as HTMLElement[];

/** The list's parts are bare elements: a screen reader needs their names, the keyboard a place to be. */
function enter(list: HTMLElement): void {
  const box = list.lastElementChild;
  const parts = { role: "listbox", "aria-label": "Choices", tabindex: "0" };
  for (const [name, value] of Object.entries(parts)) box?.setAttribute(name, value);
  for (const choice of choicesOf(list)) choice.setAttribute("role", "option");
  if (box instanceof HTMLElement) box.focus();
}

/** Arrows go through the choices, Enter takes one. */
function goThrough(list: HTMLElement, event: KeyboardEvent): void {
  const choices = choicesOf(list);
  const at = choices.indexOf(event.target as HTMLElement);
  const isArrow = event.key === "ArrowDown" || event.key === "ArrowUp";
  if (event.key === "Enter") choices[at]?.click();
  else if (isArrow) {
    const next = choices[at + (event.key === "ArrowDown" ? 1 : -1)];
    next?.setAttribute("tabindex", "-1");
    next?.focus();
  } else return;
  event.preventDefault();
  event.stopPropagation();
}

async function open(injector: Injector, { ids, row, column }: Selected): Promise<void> {
  const commands = injector.get(ICommandService);
  const table = injector
    .get(TableManager)
    .getTablesBySubunitId(ids.unitId, ids.subUnitId)
    .find((one) => {
      const { startRow, startColumn, endColumn } = one.getRange();
      return one.isShowHeader() && startRow === row && startColumn <= column && endColumn >= column;
    });
  if (table) await commands.executeCommand(OPEN_FILTER, { ...ids, row, col: column, tableId: table.getId() });
  else if (commands.hasCommand(SHOW_LIST)) {
    commands.syncExecuteCommand(SHOW_LIST, { ...ids, row, column });
    whenThere("[data-u-comp=sheets-dropdown-list]", enter);
  }
}
