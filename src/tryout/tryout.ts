import "./tryout.css";
import "./header.css";
import { type Spreadsheet, startSpreadsheet } from "../host/univer/start";
import { mountPane } from "../pane/mount";
import { type Beginning, DEMO, STARTER } from "./beginnings";
import { byId } from "./byId";
import { mountFiles } from "./files/mountFiles";
import { helpByF1 } from "./functionHelp";
import { showKept, showName } from "./heading";
import { startKeeping } from "./keep/startKeeping";
import { showMessages } from "./messages";
import { mountNewMenu } from "./newMenu";
import { Opened } from "./opened";
import type { PageHooks } from "./parts";
import { focusFirst, goRoundByF6 } from "./round";
import { Welcome } from "./welcome";

start().catch((fault: unknown) => {
  byId("message").textContent =
    `The spreadsheet could not be opened: ${fault instanceof Error ? fault.message : fault}`;
});

async function start(): Promise<void> {
  performance.mark("begun");
  const { keep, mountWorkbooks } = startKeeping();
  const [script, metadata, last] = await Promise.all([
    textOf("functions.js"),
    textOf("functions.json"),
    keep.lastOpened(),
  ]);
  const dark = matchMedia("(prefers-color-scheme: dark)");
  const first = last ?? (await keep.create(DEMO.make()));
  const spreadsheet = startSpreadsheet(byId("spreadsheet"), { script, metadata }, first.data, dark.matches);
  dark.addEventListener("change", () => spreadsheet.setDark(dark.matches));

  // The pane begins anew with each workbook: its settings are the workbook's own. The first one is seen before it.
  let leavePane = () => {};
  const opened = new Opened(keep, spreadsheet, {
    leave: () => leavePane(),
    show: ({ name }) => {
      welcome.hide();
      showName(name);
      leavePane = showPane(spreadsheet);
    },
  });
  const begin = async ({ make, at }: Beginning) => {
    await opened.openNew(make());
    if (at) await spreadsheet.host.select({ ...at, rows: 1, columns: 1 });
    spreadsheet.focus();
  };
  const tell = (doing: Promise<void>) =>
    doing.catch((fault: unknown) => {
      byId("message").textContent = fault instanceof Error ? fault.message : String(fault);
    });
  const hooks: PageHooks = {
    spreadsheet,
    current: () => opened.current(),
    open: (workbook) => opened.open(workbook),
  };
  const files = mountFiles(byId("files"), {
    ...hooks,
    openNew: (workbook) => opened.openNew(workbook),
    saved: (id, file) => opened.saved(id, file),
  });
  const welcome = new Welcome({
    lookAtDemo: () => spreadsheet.focus(),
    startOwn: () => void tell(begin(STARTER)),
    openFile: () => files.choose(),
  });
  mountWorkbooks(byId("workbooks"), {
    ...hooks,
    renamed: (name) => {
      opened.renamed(name);
      showName(name);
    },
    closed: async () => {
      await tell(opened.openNew(DEMO.make()));
      offerWays(welcome, spreadsheet, false);
    },
    saveFile: () => files.save(),
  });
  mountNewMenu((beginning) => void tell(begin(beginning)));
  opened.started(first);
  if (!last) offerWays(welcome, spreadsheet, true);

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

/** Puts the pane beside the sheet once that one is drawn and time is left; gives the way to take it away. */
function showPane({ ready, host }: Spreadsheet): () => void {
  let leave: (() => void) | undefined;
  let isLeft = false;
  const mount = () => {
    if (!isLeft) leave = mountPane(byId("pane"), host);
  };
  void ready.then(() => ("requestIdleCallback" in window ? requestIdleCallback(mount, { timeout: 1000 }) : mount()));
  return () => {
    isLeft = true;
    leave?.();
  };
}

/** Whoever begins to work in the demo has taken that way. */
function offerWays(welcome: Welcome, spreadsheet: Spreadsheet, isNew: boolean): void {
  welcome.show({ isNew });
  const leave = spreadsheet.onDataChange(({ isEdit }) => {
    if (!isEdit) return;
    welcome.hide();
    leave();
  });
}

async function textOf(file: string): Promise<string> {
  const answer = await fetch(file);
  if (!answer.ok) throw new Error(`${file} is missing beside this page (${answer.status})`);
  return answer.text();
}
