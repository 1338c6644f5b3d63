import { BEGINNINGS, type Beginning } from "./beginnings";
import { byId } from "./byId";

/** The button New and the list that it opens: what a new workbook can begin from. */
export function mountNewMenu(begin: (beginning: Beginning) => void): void {
  const button = byId("new");
  const list = byId("beginnings");
  for (const beginning of BEGINNINGS) {
    const choice = document.createElement("button");
    choice.type = "button";
    const label = document.createElement("strong");
    label.textContent = beginning.label;
    const note = document.createElement("small");
    note.textContent = beginning.note;
    note.id = `about-${list.childElementCount}`;
    choice.append(label);
    choice.setAttribute("aria-describedby", note.id);
    choice.addEventListener("click", () => {
      list.hidePopover();
      begin(beginning);
    });
    const item = document.createElement("li");
    item.append(choice, note);
    list.append(item);
  }
  list.addEventListener("toggle", () => {
    const isOpen = list.matches(":popover-open");
    button.setAttribute("aria-expanded", String(isOpen));
    if (!isOpen) return;
    const { left, bottom } = button.getBoundingClientRect();
    list.style.top = `${bottom + 4}px`;
    list.style.left = `${Math.max(4, Math.min(left, document.documentElement.clientWidth - list.offsetWidth - 4))}px`;
    list.querySelector("button")?.focus();
  });
}
