import "./tryout.css";
import type { IWorkbookData } from "@univerjs/core";
import { startSpreadsheet } from "../host/univer/start";
import { workbookData } from "../host/univer/workbook";
import { mountPane } from "../pane/mount";
import { SAMPLES } from "../samples/index";
import type { Sheet } from "../sheet/sheet";
import { byId } from "./byId";
import { showMessages } from "./messages";

/** What the page offers to open: the samples, and an empty workbook to begin one's own. */
const WORKBOOKS: readonly { readonly title: string; readonly sheets: () => readonly Sheet[] }[] = [
  ...SAMPLES,
  { title: "An empty workbook", sheets: () => [{ name: "Sheet1", widths: [], cells: [] }] },
];

start().catch((fault: unknown) => {
  byId("message").textContent =
    `The spreadsheet could not be opened: ${fault instanceof Error ? fault.message : fault}`;
});

async function start(): Promise<void> {
  const [script, metadata] = await Promise.all([textOf("functions.js"), textOf("functions.json")]);
  const dark = matchMedia("(prefers-color-scheme: dark)");
  const choice = byId("sample") as HTMLSelectElement;
  for (const { title } of WORKBOOKS) choice.add(new Option(title));
  const left = new Map<string, IWorkbookData>();
  let opened = "";
  /** As it was left, else new. */
  const chosen = () => {
    const { title, sheets } = WORKBOOKS[choice.selectedIndex] as (typeof WORKBOOKS)[number];
    opened = title;
    return left.get(title) ?? workbookData("", sheets());
  };

  const spreadsheet = startSpreadsheet(byId("spreadsheet"), { script, metadata }, chosen(), dark.matches);
  // The pane begins anew with each workbook: its settings are the workbook's own.
  let leavePane = mountPane(byId("pane"), spreadsheet.host);
  choice.addEventListener("change", () => {
    leavePane();
    left.set(opened, structuredClone(spreadsheet.snapshot()));
    spreadsheet.open(chosen());
    leavePane = mountPane(byId("pane"), spreadsheet.host);
  });
  dark.addEventListener("change", () => spreadsheet.setDark(dark.matches));
  showMessages(spreadsheet);
  moveByF6(byId("spreadsheet"), byId("pane"));
  // Nothing is kept anywhere: what was typed goes with the page.
  addEventListener("beforeunload", (event) => {
    if (spreadsheet.isChanged()) event.preventDefault();
  });
  await spreadsheet.ready;
  // For tests, which type and click as a user does but read the cells, and which one is selected, from here.
  Object.assign(window, { pourwright: spreadsheet });
}

/** A spreadsheet keeps Tab for its cells: F6 leads from it to the pane and back. */
function moveByF6(spreadsheet: HTMLElement, pane: HTMLElement): void {
  let before: Element | null = null;
  const go = (event: KeyboardEvent) => {
    if (event.key !== "F6" || event.ctrlKey || event.altKey || event.metaKey) return;
    event.preventDefault();
    event.stopImmediatePropagation();
    if (!pane.contains(document.activeElement)) {
      before = document.activeElement;
      pane.querySelector<HTMLElement>("select, input, button, summary")?.focus();
    } else if (before instanceof HTMLElement && spreadsheet.ownerDocument.contains(before)) before.focus();
  };
  window.addEventListener("keydown", go, { capture: true });
}

async function textOf(file: string): Promise<string> {
  const answer = await fetch(file);
  if (!answer.ok) throw new Error(`${file} is missing beside this page (${answer.status})`);
  return answer.text();
}
