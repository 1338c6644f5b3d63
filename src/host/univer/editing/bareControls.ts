/**
 * Dialogs, panels and lists of Univer's have controls that are bare elements to point at. They get a place in the order
 * of Tab, Enter and Space, and a name for a screen reader.
 */

import type { Injector } from "@univerjs/core";
import { ILayoutService } from "@univerjs/preset-sheets-core";
import { COMMAND_NAMES, ICON_NAMES } from "./controlNames";
import { keepWhole } from "./wholePopUps";

const POP_UP = "[data-u-comp=rect-popup]";
const PLACES = `[role=dialog], ${POP_UP}, [data-u-comp=sidebar]`;

/** The row of a conditional format is pressed anywhere; its words stand for it, as it holds a control too. */
const BARE =
  "[data-u-comp$=select], div[data-slot$=trigger], span[data-slot$=trigger], a:not([href]), .univer-cursor-pointer, [data-draggable-list-item-id] .univer-min-w-0";

/** What is reached already, or is reached within something else. */
const REACHED = "button, a[href], label, input, [role]:not([role=dialog], [role=complementary])";

const MENU = "[role=menu]";
const MENU_ITEM = "[role^=menuitem]";
const PANEL = "[data-u-comp=sidebar][aria-expanded=true]";
const COMMAND = "button[data-u-command]";

const OURS = "data-pourwright-control";

/** What has come into the page since it was looked at last. */
const added = new Set<Element>();

/** Keeps at it as the page changes. */
export function reachBareControls(injector: Injector): void {
  let last: Element | null = null;
  let place: Element | null = null;
  document.addEventListener("focusin", ({ target }) => {
    place = target instanceof Element ? target.closest(`${PLACES}, ${MENU}`) : null;
    last = place && (target as Element);
  });
  added.add(document.body);
  reachAdded();
  new MutationObserver((changes) => {
    noteAdded(changes);
    if (last?.isConnected !== false || document.activeElement !== document.body) return;
    reachAdded();
    // What had the keyboard is gone: what it stood in has it next, or the panel that a menu opened, or else the cells.
    const next = place?.isConnected ? place : last.matches(MENU_ITEM) ? document.querySelector(PANEL) : null;
    last = null;
    const control = next?.querySelector<HTMLElement>("button, [tabindex='0']");
    if (control) control.focus();
    else injector.get(ILayoutService).focus();
  }).observe(document.body, { childList: true, subtree: true });
  window.addEventListener("keydown", leaveRangeField, true);
  document.addEventListener("keydown", (event) => {
    const control = event.target;
    if (!(control instanceof HTMLElement) || !control.hasAttribute(OURS)) return;
    // What opens a menu answers to keys itself.
    if ((event.key !== "Enter" && event.key !== " ") || control.getAttribute("aria-haspopup") === "menu") return;
    event.preventDefault();
    event.stopPropagation();
    const panel = control.closest(PANEL);
    control.click();
    if (panel) stayIn(panel);
  });
}

/** Univer gives the keyboard to the cells as a panel shows another page: it comes back, within so many frames. */
function stayIn(panel: Element, frames = 60): void {
  const isOut = document.activeElement?.matches("[data-u-comp=editor]");
  if (isOut && panel.matches(PANEL)) panel.querySelector<HTMLElement>("button")?.focus();
  if (frames > 0) requestAnimationFrame(() => stayIn(panel, isOut ? 0 : frames - 1));
}

/** The field for cells in a panel would keep Tab to itself. */
function leaveRangeField(event: KeyboardEvent): void {
  if (event.key !== "Tab" || !(event.target as Element).id?.includes("RICH_TEXT_EDITOR")) return;
  const next = document.querySelector<HTMLElement>(`${PANEL} ${event.shiftKey ? "button" : `[${OURS}]`}`);
  if (!next) return;
  event.preventDefault();
  event.stopPropagation();
  next.focus();
}

/** What a button has opened stands at the end of the page: the keyboard goes into it. */
function enterOpened(): void {
  const button = document.activeElement;
  if (!button?.matches("[data-slot=popover-trigger][data-state=open]")) return;
  const opened = document.getElementById(button.getAttribute("aria-controls") ?? "");
  opened?.querySelector<HTMLElement>("button, input, [tabindex='0']")?.focus();
}

/** Has what came looked at in the next frame. */
function noteAdded(changes: readonly MutationRecord[]): void {
  const isFirst = added.size === 0;
  for (const { target, addedNodes } of changes) {
    // A drawing or a text that comes into a control says what the control is.
    for (const node of addedNodes) added.add(node instanceof Element ? node : (target as Element));
  }
  if (!isFirst || added.size === 0) return;
  requestAnimationFrame(() => {
    reachAdded();
    enterOpened();
  });
}

function reachAdded(): void {
  const places = new Set<HTMLElement>();
  for (const one of added) {
    if (!one.isConnected) continue;
    for (const button of around(one, COMMAND)) nameDrawn(button);
    for (const place of around(one, PLACES)) places.add(place);
  }
  added.clear();
  for (const place of places) {
    reachIn(place);
    if (place.matches(POP_UP)) keepWhole(place);
  }
}

/** What is of a kind: the nearest that an element is in, or is, and all within it. */
function around(element: Element, kind: string): HTMLElement[] {
  const within = [...element.querySelectorAll<HTMLElement>(kind)];
  const nearest = element.closest<HTMLElement>(kind);
  return nearest ? [nearest, ...within] : within;
}

function reachIn(place: HTMLElement): void {
  for (const control of place.querySelectorAll<HTMLElement>(BARE)) reach(control);
  for (const field of place.querySelectorAll<HTMLInputElement>("input[type=text]:not([placeholder], [aria-label])")) {
    field.setAttribute("aria-label", labelOf(field) || "Value");
  }
  // By this mark Univer gives the keyboard back to the cells as soon as a button has it.
  for (const button of place.querySelectorAll("button[data-u-comp=button]")) button.removeAttribute("data-u-comp");
  for (const arrow of place.querySelectorAll<HTMLElement>("[data-u-comp^=pager-]")) {
    arrow.setAttribute("aria-label", arrow.matches("[data-u-comp*=left]") ? "One back" : "One on");
  }
  // It is pulled by a pointer only, and says no width.
  for (const edge of place.querySelectorAll<HTMLElement>("[role=separator][tabindex='0']")) {
    for (const name of ["role", "aria-orientation", "aria-label"]) edge.removeAttribute(name);
    edge.tabIndex = -1;
  }
  // What a button above the sheet opens.
  if (place.matches("[data-slot=popover-content]:not([aria-label])")) place.setAttribute("aria-label", "More");
  for (const canvas of place.querySelectorAll<HTMLElement>("canvas[tabindex='1']")) canvas.tabIndex = -1;
}

function reach(control: HTMLElement): void {
  // A button with a menu beside it: the menu has all that the button does.
  const isAround = control.matches("[data-u-command]") && control.querySelector("[data-slot$=trigger]");
  if (!isAround && !control.hasAttribute(OURS) && !control.closest(REACHED)) {
    control.setAttribute(OURS, "");
    control.setAttribute("role", "button");
    control.tabIndex = 0;
    const label = labelOf(control);
    if (label) control.setAttribute("aria-description", label);
  }
  if (control.hasAttribute(OURS)) nameDrawn(control);
}

/** Names a control that says nothing itself. Its drawing may come after it. */
function nameDrawn(control: HTMLElement): void {
  if (control.hasAttribute("aria-label") || control.textContent?.trim()) return;
  const name = commandName(control) ?? iconName(control) ?? colorName(control);
  if (name) control.setAttribute("aria-label", name);
}

function commandName(control: HTMLElement): string | undefined {
  const id = control.closest("[data-u-command]")?.getAttribute("data-u-command") ?? "";
  return Object.entries(COMMAND_NAMES).find(([end]) => id.endsWith(end))?.[1];
}

function iconName(control: HTMLElement): string | undefined {
  const drawn = control.matches("svg") ? control : control.querySelector("svg");
  const [, icon = ""] = /univerjs-icon-([a-z-]+)-icon/.exec(drawn?.getAttribute("class") ?? "") ?? [];
  return ICON_NAMES[icon];
}

const colorName = ({ style }: HTMLElement): string | undefined =>
  style.backgroundColor ? `Colour ${style.backgroundColor}` : undefined;

/** The words above a field. */
const labelOf = (field: Element): string =>
  field.closest("[data-u-comp=form-layout]")?.firstElementChild?.textContent?.trim() ?? "";
