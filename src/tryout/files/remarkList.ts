/** What the page does not show of a file, or a file cannot carry, as a list to read. */

import type { Remark } from "../../file/book";
import { KEPT } from "../../file/read/remarks";

/** Sheet by sheet, what it is and what becomes of it. */
export function remarkList(remarks: readonly Remark[], label: string): HTMLElement {
  const list = document.createElement("ul");
  list.className = "files-list";
  // A long list scrolls, by the keyboard too.
  list.tabIndex = 0;
  list.setAttribute("aria-label", label);
  for (const { sheet, what, consequence } of grouped(remarks)) {
    const item = document.createElement("li");
    const name = document.createElement("strong");
    name.textContent = `${sheet ? `${sheet}: ` : ""}${what}.`;
    item.append(name, ` ${consequence}`);
    list.append(item);
  }
  return list;
}

/** Of what becomes the same on one sheet, one remark. */
export function grouped(remarks: readonly Remark[]): Remark[] {
  const groups = new Map<string, Remark>();
  for (const remark of remarks) {
    const ofMany = remark.consequence === KEPT.one ? KEPT.many : remark.consequence;
    const key = JSON.stringify([remark.sheet, ofMany]);
    const before = groups.get(key);
    const both = before && { ...before, what: `${before.what}, ${remark.what}`, consequence: ofMany };
    groups.set(key, both ?? remark);
  }
  return [...groups.values()];
}
