import { byId } from "./byId";
import type { Keep } from "./parts";
import { setText } from "./setText";

/** Shows the open workbook's name, in the window's title too. */
export function showName(name: string): void {
  byId("name").textContent = name;
  document.title = `${name} - Pourwright`;
}

/** Shows beside the name how the workbook is kept; below the header, and read out, when it is not. */
export function showKept(keep: Pick<Keep, "status" | "subscribe">): void {
  const words = byId("kept");
  const alert = byId("unkept");
  const reason = byId("unkept-reason");
  const button = byId("unkept-action") as HTMLButtonElement;
  const show = () => {
    const { state, text, action } = keep.status();
    const isUrgent = state === "refused" || state === "elsewhere" || state === "damaged";
    words.className = state;
    words.textContent = isUrgent ? "" : text;
    alert.hidden = !isUrgent;
    button.hidden = action === undefined;
    button.textContent = action?.label ?? "";
    setText(reason, isUrgent ? text : "");
  };
  button.addEventListener("click", () => keep.status().action?.press());
  keep.subscribe(show);
  show();
}
