import { describe } from "vitest";
import type { Host } from "../../src/host/host";
import { hostContract } from "../host/hostContract";
import { later } from "./later";
import { OpenedSite } from "./opened";

declare global {
  /** The listeners that a test keeps in the page, and how often each was called. */
  interface Window {
    listeners: Record<string, { calls: number; stop: () => void }>;
  }
}

describe("the embedded spreadsheet", () => {
  const tryout = new OpenedSite().page();
  /** The methods that take and give plain data, each called in the page. */
  const host = new Proxy({} as Host, {
    get:
      (_, method: "tables") =>
      (...given: []) =>
        tryout.host(method, ...given),
  });
  let listeners = 0;
  hostContract(() => ({
    host,
    showSheet: (sheet) => tryout.openSheet(sheet),
    typeInto: async (sheet) => {
      await tryout.openSheet(sheet);
      await tryout.type("A1", "typed");
    },
    stopAdding: (sheet, share) =>
      later(
        tryout.page,
        ([described, least]) => {
          const stop = new AbortController();
          const onProgress = (done: number) => {
            if (done >= least) stop.abort();
          };
          const added = window.pourwright.host.addSheet(described, { signal: stop.signal, onProgress });
          return added.catch((fault: Error) => fault.message);
        },
        [sheet, share] as const,
      ),
    readSpoiltSettings: () =>
      later(tryout.page, () => {
        const { host } = window.pourwright;
        const { stringify } = JSON;
        JSON.stringify = () => "{";
        const kept = host.keepSettings({});
        JSON.stringify = stringify;
        const read = kept.then(() => host.settings()).then(() => "it was done");
        return read.catch((fault: Error) => fault.message);
      }),
    listen: async () => {
      const name = `contract ${++listeners}`;
      await tryout.page.evaluate((one) => {
        const listener = { calls: 0, stop: window.pourwright.host.onChange(() => listener.calls++) };
        window.listeners = { ...window.listeners, [one]: listener };
      }, name);
      return {
        calls: () => tryout.page.evaluate((one) => window.listeners[one]?.calls ?? 0, name),
        stop: () => tryout.page.evaluate((one) => window.listeners[one]?.stop(), name),
      };
    },
    hideRow: async (sheet, row) => {
      await tryout.openSheet(sheet);
      await tryout.goTo("A1");
      await tryout.openRowMenu(row + 1);
      await tryout.page.getByText("Hide Selected Row").click();
    },
    selectCells: async (sheet, range) => {
      await tryout.openSheet(sheet);
      await tryout.goTo(range);
    },
  }));
});
