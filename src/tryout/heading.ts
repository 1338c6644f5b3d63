import { byId } from "./byId";
import type { Keep } from "./parts";

/** Shows the open workbook's name, in the window's title too. */
export function showName(name: string): void {
  byId("name").textContent = name;
  document.title = `${name} - Pourwright`;
}

/** Shows beside the name how the workbook is kept, and what can be done about it. */
export function showKept(keep: Pick<Keep, "status" | "subscribe">): void {
  const words = byId("kept");
  const button = byId("kept-action") as HTMLButtonElement;
  const show = () => {
    const { state, text, action } = keep.status();
    // Only where it differs: a live region would be read out again.
    if (words.textContent !== text) words.textContent = text;
    words.className = state;
    button.hidden = action === undefined;
    button.textContent = action?.label ?? "";
  };
  button.addEventListener("click", () => keep.status().action?.press());
  keep.subscribe(show);
  show();
}
