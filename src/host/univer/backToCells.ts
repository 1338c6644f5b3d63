const TAB = "[data-u-comp=slide-tab-item]";

/**
 * Gives the keyboard back to the cells after a click on the tab of a sheet, or Ctrl+Z would do nothing from there.
 * @param container what the spreadsheet stands in
 * @param focus gives it to the cells
 */
export function backToCells(container: HTMLElement, focus: () => void): void {
  container.addEventListener("click", ({ target, detail }) => {
    // A press by the keyboard counts no clicks, and stays where it is. So does one into the name that is edited.
    const isInTab = target instanceof Element && target.closest(TAB) !== null;
    if (isInTab && detail === 1 && !target.closest("[contenteditable=true]")) focus();
  });
}
