/** The page's head with all that opens, keeps and saves a workbook, and the pane, which comes and goes with each. */

import type { Spreadsheet } from "../host/univer/start";
import { type Beginning, DEMO, STARTER } from "./beginnings";
import { byId } from "./byId";
import { mountFiles } from "./files/mountFiles";
import { showName } from "./heading";
import { mountNewMenu } from "./newMenu";
import { Opened } from "./opened";
import type { Keep, MountWorkbooks, OpenWorkbook, PageHooks } from "./parts";
import { Welcome } from "./welcome";

/** @param isNew whether the first workbook is the demo that newcomers see, who are offered ways to begin */
export function mountHeader(
  keep: Keep,
  mountWorkbooks: MountWorkbooks,
  spreadsheet: Spreadsheet,
  first: OpenWorkbook,
  isNew: boolean,
): void {
  // The pane begins anew with each workbook: its settings are the workbook's own. The first one is seen before it.
  let leavePane = () => {};
  const opened = new Opened(keep, spreadsheet, {
    leave: () => leavePane(),
    show: ({ name }) => {
      welcome.hide();
      files.clear();
      showName(name);
      leavePane = showPane(spreadsheet);
    },
  });
  const begin = async ({ make, at }: Beginning) => {
    await opened.openNew(make());
    if (at) await spreadsheet.host.select({ ...at, rows: 1, columns: 1 });
    spreadsheet.focus();
  };
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
  if (isNew) offerWays(welcome, spreadsheet, true);
}

/** Says what went wrong below the sheet. */
const tell = (doing: Promise<void>): Promise<void> =>
  doing.catch((fault: unknown) => {
    byId("message").textContent = fault instanceof Error ? fault.message : String(fault);
  });

/** Puts the pane beside the sheet once that one is drawn and time is left; gives the way to take it away. */
function showPane({ ready, host }: Spreadsheet): () => void {
  let leave: (() => void) | undefined;
  let isLeft = false;
  const show = async () => {
    await ready;
    const { mountPane } = await import(/* webpackChunkName: "runSheet", webpackPrefetch: true */ "../pane/mount");
    await timeLeft();
    if (!isLeft) leave = mountPane(byId("pane"), host);
  };
  show().catch(() => {
    byId("pane").textContent = "The run sheet's pane could not be loaded. Load the page again to have it.";
  });
  return () => {
    isLeft = true;
    leave?.();
  };
}

const timeLeft = () =>
  new Promise<unknown>((left) =>
    "requestIdleCallback" in window ? requestIdleCallback(left, { timeout: 1000 }) : setTimeout(left),
  );

/** Whoever begins to work in the demo has taken that way. */
function offerWays(welcome: Welcome, spreadsheet: Spreadsheet, isNew: boolean): void {
  welcome.show({ isNew });
  const leave = spreadsheet.onDataChange(({ isEdit }) => {
    if (!isEdit) return;
    welcome.hide();
    leave();
  });
}
