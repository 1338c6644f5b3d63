/** What is asked before a file is made: whether what it cannot carry may be left out, and where it goes. */

import type { Remark } from "../../file/book";
import { remarkList } from "./remarkList";

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
  dialog.append(heading, ...(lost.length > 0 ? [remarkList(lost, heading.textContent)] : []));

  const buttons = document.createElement("p");
  buttons.className = "files-choices";
  const anyway = lost.length > 0 ? "Save anyway" : "Save";
  if (fileName) buttons.append(choice(`${anyway} to ${fileName}`, "again"));
  buttons.append(choice(fileName ? "Save as another file" : anyway, "another"), choice("Cancel", "cancel"));
  dialog.append(buttons);
  (buttons.firstElementChild as HTMLElement).autofocus = true;
  document.body.append(dialog);
  return new Promise((resolve) => {
    // Decided before the dialog closes, which gives the keyboard back: the next press must not meet what still waits.
    buttons.addEventListener("click", ({ target }) => {
      if (!(target instanceof HTMLButtonElement)) return;
      resolve(target.value as Decision);
      dialog.close();
    });
    dialog.addEventListener("keydown", ({ key }) => key === "Escape" && resolve("cancel"));
    dialog.addEventListener("close", () => {
      dialog.remove();
      resolve("cancel");
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
