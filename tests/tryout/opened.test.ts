import type { IWorkbookData } from "@univerjs/core";
import { describe, expect, it } from "vitest";
import type { Spreadsheet } from "../../src/host/univer/start";
import { Opened } from "../../src/tryout/opened";
import type { Keep, NewWorkbook, OpenWorkbook } from "../../src/tryout/parts";

const workbook = (name: string): NewWorkbook => ({ name, data: { name } as IWorkbookData, original: null });

/** A page whose keeping takes its time, and what is done in it, in order. */
function page() {
  const did: string[] = [];
  const later = () => new Promise((next) => setTimeout(next));
  let kept = 0;
  let shown = "";
  const keep = {
    create: async (one: NewWorkbook): Promise<OpenWorkbook> => {
      await later();
      return { ...one, id: `w${++kept}` };
    },
    open: (id: string) => Promise.reject(new Error(`${id} was not kept`)),
    stop: later,
    start: () => undefined,
    mayLeave: () => true,
  } as unknown as Keep;
  const spreadsheet = {
    finishTyping: later,
    snapshot: () => ({ name: shown }),
    open(data: IWorkbookData) {
      if (data.name === "Bad") throw new Error("cannot be shown");
      shown = data.name;
    },
  } as unknown as Spreadsheet;
  const opened = new Opened(keep, spreadsheet, {
    leave: () => did.push("leave"),
    show: ({ name }) => did.push(`show ${name}`),
  });
  return { opened, did, shown: () => shown };
}

describe("workbooks are opened one at a time", () => {
  it("where two are asked for at once: the last one asked for stays", async () => {
    const { opened, did, shown } = page();
    await Promise.all([opened.openNew(workbook("One")), opened.open({ ...workbook("Two"), id: "two" })]);
    expect(did).toEqual(["leave", "show One", "leave", "show Two"]);
    expect([shown(), (await opened.current())?.name]).toEqual(["Two", "Two"]);
  });

  it("also after one that could not be shown, which leaves the one before as it was", async () => {
    const { opened, did, shown } = page();
    await opened.openNew(workbook("One"));
    const bad = opened.openNew(workbook("Bad"));
    const next = opened.openNew(workbook("Next"));
    await expect(bad).rejects.toThrow("cannot be shown");
    await next;
    expect(did).toEqual(["leave", "show One", "leave", "show One", "leave", "show Next"]);
    expect(shown()).toBe("Next");
  });
});
