import type { Spreadsheet } from "../host/univer/start";
import { byId } from "./byId";

const pageOf = (id: string | null) => `help/${id ?? "index"}.html`;

/** F1 opens the help page of the function being typed, or of the selected cell's; words beside the cells say so. */
export function helpByF1(spreadsheet: Spreadsheet): void {
  const link = byId("function-help") as HTMLAnchorElement;
  spreadsheet.onTyping(() => {
    const id = spreadsheet.typedFunction();
    link.hidden = id === null;
    if (id === null) return;
    link.href = pageOf(id);
    link.textContent = `F1: help on POUR.${id}`;
  });
  const go = (event: KeyboardEvent) => {
    if (event.key !== "F1" || event.ctrlKey || event.altKey || event.metaKey || event.shiftKey) return;
    event.preventDefault();
    event.stopImmediatePropagation();
    window.open(pageOf(spreadsheet.typedFunction() ?? spreadsheet.selectedFunction()), "_blank");
  };
  window.addEventListener("keydown", go, { capture: true });
}
