/** The menu of the cells, which a right click opens, by keys: Shift+F10 or the menu key, arrows, Enter and Escape. */

import type { Injector } from "@univerjs/core";
import type { IMouseEvent } from "@univerjs/preset-sheets-core";
import {
  ContextMenuPosition,
  IContextMenuService,
  ILayoutService,
  IRenderManagerService,
  KeyCode,
  MetaKeys,
  SHEET_VIEWPORT_KEY,
  SheetSkeletonManagerService,
} from "@univerjs/preset-sheets-core";
import { keyAdder } from "./keys";
import type { Selected } from "./selected";
import { whenThere } from "./whenThere";

/** Univer has no name for it. */
const MENU_KEY = 93;

/** The class says that it shows: closed it stays in the page, far outside. */
const MENU = ":is(.univer-popup-enter-active, .univer-popup-enter-done)";
const SUBMENU = "[data-u-context-menu-submenu]";
/** Marks one that was left: it stays for half a second. */
const LEFT = "data-pourwright-left";
const CONTROL = "button:enabled, input";

export function addCellMenuKeys(injector: Injector): void {
  keyAdder(injector)("cell-menu", [KeyCode.F10 | MetaKeys.SHIFT, MENU_KEY], (at) => open(injector, at));
  // The browser would put its own menu over it.
  document.addEventListener("contextmenu", (event) => {
    if (injector.get(IContextMenuService).visible) event.preventDefault();
  });
  window.addEventListener("keydown", (event) => goThrough(injector, event), true);
}

async function open(injector: Injector, at: Selected): Promise<void> {
  const place = placeOf(injector, at);
  if (!place) return;
  const nothing = () => undefined;
  // All that Univer reads of an event.
  const event = { ...place, preventDefault: nothing, stopPropagation: nothing } as unknown as IMouseEvent;
  injector.get(IContextMenuService).triggerContextMenu(event, ContextMenuPosition.MAIN_AREA);
  whenThere(`${MENU} :is(${CONTROL})`, (control) => {
    const menu = control.closest(MENU);
    for (const [name, value] of Object.entries({ role: "group", "aria-label": "Cell menu" })) {
      menu?.setAttribute(name, value);
    }
    takeKeyboard(injector, control);
  });
}

/** Until it has its place it is hidden, and what was pressed before may still bring the keyboard back to the cells. */
function takeKeyboard(injector: Injector, control: HTMLElement, frames = 30): void {
  if (!control.isConnected || !injector.get(IContextMenuService).visible) return;
  // By now the keyboard may be in a submenu, which stands elsewhere in the page.
  if (!document.activeElement?.closest(`${MENU}, ${SUBMENU}`)) control.focus();
  if (frames > 0) requestAnimationFrame(() => takeKeyboard(injector, control, frames - 1));
}

/** The lower left corner of a cell in the window, or the nearest place where cells are. */
function placeOf(injector: Injector, { ids, row, column }: Selected): { clientX: number; clientY: number } | null {
  const render = injector.get(IRenderManagerService).getRenderById(ids.unitId);
  const skeleton = render?.with(SheetSkeletonManagerService).getCurrentSkeleton();
  const cells = render?.scene.getViewport(SHEET_VIEWPORT_KEY.VIEW_MAIN);
  const canvas = render?.engine.getCanvasElement().getBoundingClientRect();
  if (!render || !skeleton || !cells || !canvas) return null;
  const { startX, endY } = skeleton.getCellWithCoordByIndex(row, column);
  const { scaleX, scaleY } = render.scene.getAncestorScale();
  const within = (least: number, at: number, most: number) => Math.min(Math.max(least, at), most);
  return {
    clientX: within(canvas.left + cells.left, canvas.left + (startX - cells.viewportScrollX) * scaleX, canvas.right),
    clientY: within(canvas.top + cells.top, canvas.top + (endY - cells.viewportScrollY) * scaleY, canvas.bottom),
  };
}

/** What the keys do in it. */
function goThrough(injector: Injector, event: KeyboardEvent): void {
  const control = event.target instanceof HTMLElement ? event.target : null;
  const menu = control?.closest<HTMLElement>(`${MENU}, ${SUBMENU}`);
  if (!control || !menu) return;
  const { key } = event;
  const isInput = control.matches("input");
  if (key === "Escape" || (key === "ArrowLeft" && !isInput && menu.matches(SUBMENU))) {
    leave(injector, event);
    return;
  }
  const [isForward, isBack] = [key === "Tab" && !event.shiftKey, key === "Tab" && event.shiftKey];
  let isHandled = true;
  const controls = [...menu.querySelectorAll<HTMLElement>(CONTROL)];
  const at = controls.indexOf(control);
  if (isForward || (key === "ArrowDown" && !isInput)) controls[(at + 1) % controls.length]?.focus();
  else if (isBack || (key === "ArrowUp" && !isInput)) controls.at(at - 1)?.focus();
  else if (key === "Home" && !isInput) controls[0]?.focus();
  else if (key === "End" && !isInput) controls.at(-1)?.focus();
  else if (!isInput && (key === "Enter" || key === " " || key === "ArrowRight")) press(control, key);
  else isHandled = false;
  if (isHandled) event.preventDefault();
  // None of them is for the cells.
  event.stopPropagation();
}

/** The control whose submenu is open. */
let opener: HTMLElement | null = null;

function press(control: HTMLElement, key: string): void {
  const hasMore = control.querySelector(":scope > svg:last-child") !== null;
  // An arrow only opens what more there is.
  if (key === "ArrowRight" && !hasMore) return;
  const left = control === opener ? document.querySelector(`${SUBMENU}[${LEFT}]`) : null;
  left?.removeAttribute(LEFT);
  control.click();
  // Univer hides one that is still there until it has its place, which it finds anew only as the page scrolls.
  if (left) window.dispatchEvent(new Event("scroll"));
  if (!hasMore) return;
  opener = control;
  // Before it has its place it is hidden, and cannot have the keyboard.
  whenThere(`${SUBMENU}[style*="visibility: visible"]:not([${LEFT}]) :is(${CONTROL})`, (first) => first.focus());
}

/** From a submenu to what opened it, from the menu to the cells. */
function leave(injector: Injector, event: KeyboardEvent): void {
  event.preventDefault();
  event.stopPropagation();
  const submenu = event.target instanceof Element && event.target.closest(SUBMENU);
  if (submenu && opener?.isConnected) {
    submenu.setAttribute(LEFT, "");
    opener.focus();
    // Univer closes it when the pointer leaves it.
    opener.dispatchEvent(new MouseEvent("mouseout", { bubbles: true, relatedTarget: opener.closest(MENU) }));
    return;
  }
  injector.get(IContextMenuService).hideContextMenu();
  injector.get(ILayoutService).focus();
}
