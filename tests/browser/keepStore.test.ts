/** The store on a real browser's storage: bundled by itself and run on a page of the built site. */

import { fileURLToPath } from "node:url";
import { build } from "esbuild";
import type { Page } from "playwright-core";
import { beforeAll, beforeEach, describe, expect, it } from "vitest";
import type { State, Store } from "../../src/tryout/keep/store";
import { later } from "./later";
import { OpenedSite } from "./opened";

const SOURCE = fileURLToPath(new URL("../../src/tryout/keep/store.ts", import.meta.url));

declare global {
  interface Window {
    readonly kept: { readonly Store: typeof Store };
    store: Store;
    states: State[];
    /** Puts down a state of the workbook `costs` with these slots on top of the last one. */
    put(slots: string[], changed: Record<string, string>, number?: number): Promise<State>;
  }
}

/** As text: what runs the tests puts helpers of its own into functions, which the page does not have. */
const HELPERS = `
  window.states = [];
  window.put = async (slots, pieces, number = states.length + 1) => {
    const first = number === 1 && { workbook: { id: "costs", name: "Costs", opened: 1, fileSize: 3 }, file: { bytes: new Uint8Array([1, 2, 3]) } };
    const { state, done } = store.save({
      workbook: "costs", number, base: states.at(-1) ?? null, slots, changed: new Map(Object.entries(pieces)), ...(first && { first }),
    });
    await done;
    states.push(state);
    return state;
  };`;

describe("the store", () => {
  const site = new OpenedSite();
  let bundle: string;
  let page: Page;
  beforeAll(async () => {
    const { outputFiles } = await build({
      entryPoints: [SOURCE],
      bundle: true,
      write: false,
      format: "iife",
      globalName: "kept",
      footer: { js: "window.kept = kept;" },
    });
    bundle = outputFiles[0]?.text ?? "";
  });
  beforeEach(async () => {
    const context = await site.browser.newContext();
    page = await context.newPage();
    await begin();
    return () => context.close();
  });

  /** Opens the storage as a page does that begins. */
  const begin = async () => {
    await page.goto(`${site.origin}/help/index.html`);
    await page.evaluate(`${bundle}; window.store = new kept.Store("test"); ${HELPERS}`);
  };
  const pieces = (place: number) =>
    later(
      page,
      async (i) => {
        const { states } = (await window.store.list())[0] ?? { states: [] };
        const read = states[i] && (await window.store.read(states[i]));
        return read ? Object.fromEntries(read) : read;
      },
      place,
    );
  const count = (store: string) =>
    later(page, async (name) => (await (await window.store.ready()).getAllKeys(name as "pieces")).length, store);

  it("gives back a state whole, with the pieces that it shares with the one before", async () => {
    await later(page, () => window.put(["a", "b", "c"], { a: "1", b: "2", c: "3" }));
    await later(page, () => window.put(["a", "b"], { b: "two" }));
    expect(await count("pieces")).toBe(4);
    await begin();
    expect(await pieces(0)).toEqual({ a: "1", b: "two" });
    expect(await pieces(1)).toEqual({ a: "1", b: "2", c: "3" });
    expect(await later(page, async () => [...((await window.store.file("costs"))?.bytes ?? [])])).toEqual([1, 2, 3]);
  });

  it("puts nothing down of a state whose number another tab has taken", async () => {
    await later(page, () => window.put(["a"], { a: "1" }));
    const fault = await later(page, () =>
      window.put(["a"], { a: "other" }, 1).then(
        () => "",
        (caught) => caught.reason,
      ),
    );
    expect(fault).toBe("elsewhere");
    expect(await pieces(0)).toEqual({ a: "1" });
    expect(await count("pieces")).toBe(1);
  });

  it("puts nothing down of a workbook whose file cannot be kept", async () => {
    const fault = await later(page, () => {
      const first = { workbook: { id: "x", name: "X", opened: 1, fileSize: 0 }, file: { bytes: (() => 1) as never } };
      const changed = new Map([["a", "1"]]);
      const { done } = window.store.save({ workbook: "x", number: 1, base: null, slots: ["a"], changed, first });
      return done.then(
        () => "",
        (caught) => caught.reason,
      );
    });
    expect(fault).toBe("refused");
    for (const store of ["workbooks", "states", "pieces", "files"]) expect(await count(store)).toBe(0);
  });

  it("knows a state of which a piece is missing or was cut", async () => {
    await later(page, () => window.put(["a", "b"], { a: "one", b: "2" }));
    await later(page, () => window.put(["a", "b"], { a: "more" }));
    await later(page, async () => (await window.store.ready()).put("pieces", "mo", ["costs", 2, 0]));
    expect(await pieces(0)).toBeNull();
    expect(await pieces(1)).toEqual({ a: "one", b: "2" });
    await later(page, async () => (await window.store.ready()).delete("pieces", ["costs", 1, 1]));
    expect(await pieces(1)).toBeNull();
  });

  it("throws away old states and the pieces that nobody needs any more, and no others", async () => {
    await later(page, () => window.put(["a", "b"], { a: "1", b: "2" }));
    for (let i = 2; i <= 6; i++) await later(page, (n) => window.put(["a", "b"], { a: `${n}` }), i);
    await later(page, () => window.store.tidy("costs", (states) => states.filter(({ number }) => number < 5)));
    expect(await count("states")).toBe(2);
    expect(await count("pieces")).toBe(3);
    expect(await pieces(0)).toEqual({ a: "6", b: "2" });
    expect(await pieces(1)).toEqual({ a: "5", b: "2" });
  });

  it("goes back without losing the state before, however often it is thinned", async () => {
    await later(page, () => window.put(["a"], { a: "old" }));
    await later(page, () => window.put(["a"], { a: "new" }));
    await later(page, async () => {
      await window.store.goBack(window.states[0] as State);
      await window.store.tidy("costs");
    });
    expect(await pieces(0)).toEqual({ a: "old" });
    expect(await pieces(1)).toEqual({ a: "new" });
  });

  it("duplicates a workbook with its file, and neither has anything of the other", async () => {
    await later(page, () => window.put(["a"], { a: "1" }));
    await later(page, async () => {
      const copy = { id: "copy", name: "Costs 2", opened: 2, fileSize: 3 };
      await window.store.copy(window.states[0] as State, copy);
      await window.store.note("costs", { removed: 1 });
      await window.store.purge();
    });
    expect(await later(page, async () => (await window.store.list()).map(({ name }) => name))).toEqual(["Costs 2"]);
    expect(await pieces(0)).toEqual({ a: "1" });
    for (const store of ["workbooks", "states", "pieces", "files"]) expect(await count(store)).toBe(1);
  });

  it("hides what was removed, and puts it back until it is thrown away for good", async () => {
    await later(page, () => window.put(["a"], { a: "1" }));
    const listed = (changes: { removed: number | undefined }) =>
      later(
        page,
        async (all) => {
          const isThere = await window.store.note("costs", all);
          return [isThere, (await window.store.list()).length];
        },
        changes,
      );
    expect(await listed({ removed: 5 })).toEqual([true, 0]);
    expect(await listed({ removed: undefined })).toEqual([true, 1]);
    expect(await listed({ removed: 5 })).toEqual([true, 0]);
    await later(page, () => window.store.purge());
    expect(await listed({ removed: undefined })).toEqual([false, 0]);
  });

  it("refuses storage of a newer layout in words, and waits for nobody", async () => {
    await later(page, async () => {
      const request = indexedDB.open("newer", 99);
      await new Promise((done) => {
        request.onsuccess = done;
      });
      request.result.close();
    });
    const fault = await later(page, () =>
      new window.kept.Store("newer").ready().then(
        () => "",
        (caught) => caught.reason,
      ),
    );
    expect(fault).toBe("newer");
  });

  it("lets go of the storage when a newer page or the user wants it, and then starts afresh", async () => {
    await later(page, () => window.put(["a"], { a: "1" }));
    const before = await page.evaluate(() => window.store.epoch);
    await later(page, async () => {
      const request = indexedDB.deleteDatabase("test");
      await new Promise((done) => {
        request.onsuccess = done;
      });
    });
    expect(await page.evaluate(() => window.store.epoch)).toBeGreaterThan(before);
    expect(await later(page, async () => (await window.store.list()).length)).toBe(0);
  });
});
