/** The embedded spreadsheet without its page keeps to what every host does; with its page it does in the browser tests. */

import { ICommandService } from "@univerjs/core";
import { deserializeRangeWithSheet } from "@univerjs/engine-formula";
import { IRenderManagerService } from "@univerjs/engine-render";
import {
  ScrollToRangeOperation,
  SetRangeValuesCommand,
  SetRowHiddenCommand,
  SetSelectionsOperation,
  SetWorksheetActiveOperation,
} from "@univerjs/preset-sheets-core";
import { NEVER } from "rxjs";
import { afterAll, describe } from "vitest";
import { parseAnew } from "../../../src/engine/parseAnew";
import { forgetOldMessages } from "../../../src/engine/problems";
import { readTypedFormulas } from "../../../src/engine/typing";
import { UniverHost } from "../../../src/host/univer/adapter";
import { followEdits } from "../../../src/host/univer/editing/edits";
import { followResize } from "../../../src/host/univer/editing/followGrowth";
import { placedTables } from "../../../src/host/univer/placedTables";
import { hostContract } from "../hostContract";
import { Headless } from "./headless";

const messageOf = (work: Promise<unknown>): Promise<string> =>
  work.then(
    () => "it was done",
    (error: Error) => error.message,
  );

describe("the embedded spreadsheet without its page", () => {
  const page = new Headless([{ name: "Sheet1", widths: [], cells: [] }]);
  const { injector } = page;
  forgetOldMessages(injector);
  readTypedFormulas(injector, (workbook) => placedTables(injector, workbook));
  parseAnew(injector);
  followEdits(injector, (edit) => followResize(injector, edit));
  // Nothing is drawn or scrolled.
  injector.add([IRenderManagerService, { useValue: { created$: NEVER } as unknown as IRenderManagerService }]);
  injector.get(ICommandService).registerCommand({ ...ScrollToRangeOperation, handler: () => true });
  const host = new UniverHost(page.univer);
  afterAll(() => page.univer.dispose());

  const sheet = (name: string) => page.workbook.getSheetBySheetName(name);
  const run = async (id: string, params: object): Promise<void> => {
    await injector.get(ICommandService).executeCommand(id, { ...page.ids, ...params });
  };
  const show = (name: string) => run(SetWorksheetActiveOperation.id, { subUnitId: sheet(name)?.getSheetId() });

  hostContract(() => ({
    host,
    showSheet: show,
    typeInto: async (name) => {
      await show(name);
      const range = { startRow: 0, endRow: 0, startColumn: 0, endColumn: 0 };
      await run(SetRangeValuesCommand.id, { range, value: { v: "typed" } });
    },
    stopAdding: (described, share) => {
      const stop = new AbortController();
      const onProgress = (done: number) => done >= share && stop.abort();
      return messageOf(host.addSheet(described, { signal: stop.signal, onProgress }));
    },
    readSpoiltSettings: async () => {
      const { stringify } = JSON;
      JSON.stringify = () => "{";
      const kept = host.keepSettings({});
      JSON.stringify = stringify;
      await kept;
      return messageOf(host.settings());
    },
    listen: async () => {
      let calls = 0;
      const stop = host.onChange(() => calls++);
      return { calls: async () => calls, stop: async () => stop() };
    },
    hideRow: async (name, row) => {
      await show(name);
      const ranges = [{ startRow: row, endRow: row, startColumn: 0, endColumn: 10 }];
      await run(SetRowHiddenCommand.id, { ranges });
    },
    selectCells: async (name, range) => {
      await show(name);
      const { range: cells } = deserializeRangeWithSheet(range);
      const primary = { ...cells, endRow: cells.startRow, endColumn: cells.startColumn };
      const { startRow: actualRow, startColumn: actualColumn } = cells;
      const first = { ...primary, actualRow, actualColumn, isMerged: false, isMergedMainCell: false };
      await run(SetSelectionsOperation.id, { selections: [{ range: cells, primary: first, style: null }] });
    },
  }));
});
