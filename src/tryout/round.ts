/** A part of the page that F6 stops at. */
export interface Stop {
  readonly element: HTMLElement;
  readonly focus: () => void;
}

/** A spreadsheet keeps Tab for its cells: F6 goes round the parts of the page, with Shift the other way. */
export function goRoundByF6(stops: readonly Stop[]): void {
  const go = (event: KeyboardEvent) => {
    if (event.key !== "F6" || event.ctrlKey || event.altKey || event.metaKey) return;
    event.preventDefault();
    event.stopImmediatePropagation();
    // A question that is being asked has to be answered first.
    if (document.querySelector("dialog:modal")) return;
    const here = stops.findIndex(({ element }) => element.contains(document.activeElement));
    // What has the focus without being in a part is the cells' editor, or nothing.
    const next = (Math.max(here, 0) + (event.shiftKey ? stops.length - 1 : 1)) % stops.length;
    stops[next]?.focus();
  };
  window.addEventListener("keydown", go, { capture: true });
}

/** Focuses the first thing in an element that can be used. */
export function focusFirst(element: HTMLElement): void {
  const all = element.querySelectorAll<HTMLElement>("button, select, input, a[href], summary");
  for (const one of all) {
    if (one.matches(":disabled") || !one.checkVisibility({ visibilityProperty: true })) continue;
    one.focus();
    return;
  }
}
