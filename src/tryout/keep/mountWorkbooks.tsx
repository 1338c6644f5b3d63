import { createRoot } from "react-dom/client";
import type { WorkbookHooks } from "../parts";
import type { Keeping } from "./keeping";
import { Library } from "./library";
import { Workbooks } from "./Workbooks";
import "./workbooks.css";

/** Puts My workbooks into the header: a button, and behind it the list. */
export function mountWorkbooks(keeping: Keeping, element: HTMLElement, hooks: WorkbookHooks): void {
  keeping.hooks = hooks;
  const library = new Library(keeping);
  const button = document.createElement("button");
  button.type = "button";
  button.textContent = "My workbooks";
  const dialog = document.createElement("dialog");
  dialog.className = "workbooks";
  dialog.setAttribute("aria-labelledby", "workbooks-title");
  const head = document.createElement("header");
  const title = document.createElement("h2");
  title.id = "workbooks-title";
  title.textContent = "My workbooks";
  const close = document.createElement("button");
  close.type = "button";
  close.textContent = "Close";
  head.append(title, close);
  const list = document.createElement("div");
  dialog.append(head, list);
  element.append(button);
  document.body.append(dialog);

  const root = createRoot(list);
  let opened = 0;
  const leave = () => {
    dialog.close();
    hooks.spreadsheet.focus();
  };
  button.addEventListener("click", () => {
    opened++;
    root.render(<Workbooks key={opened} library={library} close={leave} />);
    dialog.showModal();
  });
  close.addEventListener("click", () => dialog.close());
}
