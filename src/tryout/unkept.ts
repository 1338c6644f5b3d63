import type { Keep, KeepStatus, OpenWorkbook } from "./parts";

/** Keeps nothing, and says so once something is changed: for a browser without a storage of its own. */
export function unkept(): Keep {
  const callbacks = new Set<() => void>();
  let status: KeepStatus = { state: "nothing", text: "" };
  let stop: (() => void) | undefined;
  const say = (now: KeepStatus) => {
    status = now;
    for (const callback of callbacks) callback();
  };
  const notKept: KeepStatus = { state: "refused", text: "Not kept: this page forgets it when you close it." };
  const known = new Map<string, OpenWorkbook>();
  return {
    lastOpened: async () => null,
    create: async (workbook) => {
      const opened = { ...workbook, id: crypto.randomUUID() };
      known.set(opened.id, opened);
      return opened;
    },
    open: async (id) => {
      const workbook = known.get(id);
      if (!workbook) throw new Error("This workbook is not there any more.");
      return workbook;
    },
    start: (_, spreadsheet) => {
      stop?.();
      say({ state: "nothing", text: "" });
      stop = spreadsheet.onDataChange(({ isEdit }) => {
        if (isEdit) say(notKept);
      });
    },
    stop: async () => stop?.(),
    saved: async () => undefined,
    status: () => status,
    subscribe: (callback) => {
      callbacks.add(callback);
      return () => callbacks.delete(callback);
    },
  };
}
