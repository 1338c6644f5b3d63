import { afterEach, beforeEach, describe, vi } from "vitest";
import { SETTINGS } from "../../../src/host/settingsKeys";
import { hostContract } from "../hostContract";
import { everything } from "./client/requirementSets";
import type { SheetModel } from "./model";
import { newHost, StandIn, type Version } from "./standIn";

/** Excel hears of listeners in turns of its own. */
const turn = () => new Promise((next) => setTimeout(next));

const messageOf = (work: Promise<unknown>): Promise<string> =>
  work.then(
    () => "it was done",
    (error: Error) => error.message,
  );

let standIn: StandIn;
afterEach(() => vi.unstubAllGlobals());

/** The oldest Excel that loads the add-in; it lets no table grow. */
const OLDEST: Version = {};

// Of today's also with the formulas filled in by Excel, not at all, and over what stands in their columns.
describe.each([
  ["the oldest Excel", OLDEST, "blank"],
  ["Excel on the web, which fills no columns of a growing table", { knows: everything }, "none"],
  ["Excel for Windows, which fills blank cells of them", { knows: everything, platform: "windows" }, "blank"],
  ["Excel for Mac, which fills all cells of them", { knows: everything, platform: "mac" }, "all"],
] as [string, Version, "blank" | "none" | "all"][])("%s", (_, version, fills) => {
  const host = newHost();
  beforeEach(() => {
    standIn = new StandIn(version).install();
    standIn.sheet("Sheet1");
  });
  const sheet = (name: string): SheetModel => standIn.book.find(name) as SheetModel;
  hostContract(() => {
    standIn.book.fills = fills;
    // The contract's formulas: the quantity in column C of the row that the formula names, times itself.
    standIn.book.answer = (formula) => {
      const [, row] = /\*C(\d+)$/.exec(formula) ?? [];
      if (!row) return 2;
      const quantity = standIn.book.sheets.at(-1)?.cell(Number(row) - 1, 2)?.value;
      return Number(quantity) ** 2;
    };
    return {
      host,
      showSheet: async (name) => {
        standIn.book.active = standIn.book.sheets.indexOf(sheet(name));
        await standIn.fire("worksheets.onActivated");
      },
      typeInto: async (name) => {
        sheet(name).enter(0, 0, "typed");
        await standIn.fire("worksheets.onChanged");
      },
      stopAdding: (described, share) => {
        const stop = new AbortController();
        const onProgress = (done: number) => done >= share && stop.abort();
        return messageOf(host.addSheet(described, { signal: stop.signal, onProgress }));
      },
      readSpoiltSettings: () => {
        standIn.book.settings.set(SETTINGS, "{");
        return messageOf(host.settings());
      },
      listen: async () => {
        let calls = 0;
        const stop = host.onChange(() => calls++);
        await turn();
        return {
          calls: async () => calls,
          stop: async () => {
            stop();
            await turn();
          },
        };
      },
      hideRow: async (name, row) => {
        sheet(name).hiddenRows.add(row);
      },
      selectCells: async (name, range) => {
        const [, from = "", first, to = "", last] = /^([A-Z])(\d+):([A-Z])(\d+)$/.exec(range) ?? [];
        const [row, column] = [Number(first) - 1, from.charCodeAt(0) - 65];
        standIn.book.active = standIn.book.sheets.indexOf(sheet(name));
        standIn.book.selected = [{ row, column, rows: Number(last) - row, columns: to.charCodeAt(0) - 64 - column }];
      },
    };
  }, version !== OLDEST);
});
