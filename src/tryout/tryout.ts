import "./early";
import "./tryout.css";
import "./header.css";
import "../pane/pane.css";
import { startSpreadsheet } from "../host/univer/start";
import type { KnownValues } from "../sheet/knownValues";
import { DEMO } from "./beginnings";
import { byId } from "./byId";
import { bundle, store } from "./early";
import { helpByF1 } from "./functionHelp";
import { mountHeader } from "./header";
import { showKept } from "./heading";
import { startKeeping } from "./keep/startKeeping";
import { showMessages } from "./messages";
import { focusFirst, goRoundByF6 } from "./round";

/** What the demo's formulas gave when its file was made: the build puts it here. */
declare const DEMO_VALUES: KnownValues;

start().catch((fault: unknown) => {
  byId("message").textContent =
    `The spreadsheet could not be opened: ${fault instanceof Error ? fault.message : fault}`;
});

async function start(): Promise<void> {
  performance.mark("begun");
  const { keep, mountWorkbooks } = startKeeping(store);
  const [functions, last] = await Promise.all([bundle, keep.lastOpened()]);
  const workbook = last ?? (await keep.create(DEMO.make()));
  const first = { data: workbook.data, ...(!last && { known: DEMO_VALUES }) };
  const dark = matchMedia("(prefers-color-scheme: dark)");
  const spreadsheet = startSpreadsheet(byId("spreadsheet"), functions, first, dark.matches);
  dark.addEventListener("change", () => spreadsheet.setDark(dark.matches));

  mountHeader(keep, mountWorkbooks, spreadsheet, workbook, !last);
  showKept(keep);
  showMessages(spreadsheet);
  helpByF1(spreadsheet);
  goRoundByF6([
    { element: byId("spreadsheet"), focus: () => spreadsheet.focus() },
    { element: byId("pane"), focus: () => focusFirst(byId("pane")) },
    { element: byId("header"), focus: () => focusFirst(byId("header")) },
  ]);
  await spreadsheet.ready;
  // For tests, which type and click as a user does but read the cells, and which one is selected, from here.
  Object.assign(window, { pourwright: spreadsheet });
}
