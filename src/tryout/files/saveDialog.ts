/** What is asked before a file is made: whether what it cannot carry may be left out, and where it goes. */

import type { Remark } from "../../file/book";

export interface Question {
  readonly lost: readonly Remark[];
  /** The file that a press would write again; null where none is known. */
  readonly fileName: string | null;
}

/** What the maker pressed: to write the file again, to make another one, or nothing. */
export type Decision = "again" | "another" | "cancel";

/** Asks in a dialog over the page, which keeps the focus; Escape cancels. */
export function askBeforeSaving({ lost, fileName }: Question): Promise<Decision> {
  const dialog = document.createElement("dialog");
  dialog.className = "files-dialog";
  const heading = document.createElement("h2");
  heading.id = "files-dialog-heading";
  heading.textContent = lost.length > 0 ? "Not all of it fits into the file" : "Save the workbook";
  dialog.setAttribute("aria-labelledby", heading.id);
  dialog.append(heading, ...(lost.length > 0 ? [remarkList(lost)] : []));

  const buttons = document.createElement("p");
  buttons.className = "files-choices";
  const anyway = lost.length > 0 ? "Save anyway" : "Save";
  if (fileName) buttons.append(choice(`${anyway} to ${fileName}`, "again"));
  buttons.append(choice(fileName ? "Save as another file" : anyway, "another"), choice("Cancel", "cancel"));
  dialog.append(buttons);
  document.body.append(dialog);
  return new Promise((resolve) => {
    buttons.addEventListener("click", ({ target }) => {
      if (target instanceof HTMLButtonElement) dialog.close(target.value);
    });
    dialog.addEventListener("close", () => {
      dialog.remove();
      resolve(dialog.returnValue === "again" || dialog.returnValue === "another" ? dialog.returnValue : "cancel");
    });
    dialog.showModal();
  });
}

function choice(label: string, decision: Decision): HTMLButtonElement {
  const button = document.createElement("button");
  button.type = "button";
  button.value = decision;
  button.textContent = label;
  return button;
}

/** Sheet by sheet, what it is and what becomes of it. */
export function remarkList(remarks: readonly Remark[]): HTMLElement {
  const list = document.createElement("ul");
  list.className = "files-list";
  for (const { sheet, what, consequence } of remarks) {
    const item = document.createElement("li");
    const name = document.createElement("strong");
    name.textContent = `${sheet ? `${sheet}: ` : ""}${what}.`;
    item.append(name, ` ${consequence}`);
    list.append(item);
  }
  return list;
}
