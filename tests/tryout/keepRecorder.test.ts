// @vitest-environment happy-dom
import type { IWorkbookData } from "@univerjs/core";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import type { Change } from "../../src/host/univer/changes";
import { workbookData } from "../../src/host/univer/workbook";
import { type Recorded, Recorder } from "../../src/tryout/keep/recorder";
import { type Slot, workbookOf } from "../../src/tryout/keep/slots";
import type { NewState, State } from "../../src/tryout/keep/store";

type Cells = Record<number, Record<number, { v: string | number }>>;

/** A spreadsheet with one workbook whose cells a test writes. */
class FakeSheet {
  readonly #callbacks = new Set<(change: Change) => void>();
  data: IWorkbookData;

  constructor(cells: Cells = { 0: { 0: { v: "first" } } }, id = "unit") {
    const sheet = { id: "s", name: "Sheet", cellData: cells };
    this.data = { ...workbookData("", []), id, sheetOrder: ["s"], sheets: { s: sheet } };
  }

  snapshot() {
    return this.data;
  }

  onDataChange(callback: (change: Change) => void) {
    this.#callbacks.add(callback);
    return () => this.#callbacks.delete(callback);
  }

  /** What is being typed into the first row. */
  typed: string | null = null;

  async finishTyping() {
    if (this.typed !== null) this.write(0, this.typed);
    this.typed = null;
  }

  write(row: number, value: string | number, isEdit = true) {
    (this.data.sheets.s?.cellData as Cells)[row] = { 0: { v: value } };
    for (const callback of this.#callbacks) callback({ sheets: ["s"], rows: [row], isEdit });
  }
}

/** A store that keeps states in memory, and that a test can let wait and fail. */
class FakeStore {
  epoch = 0;
  readonly states = new Map<number, State>();
  readonly pieces = new Map<string, string>();
  readonly written: Slot[][] = [];
  firsts = 0;
  purged = 0;
  faults: string[] = [];
  gate: Promise<void> = Promise.resolve();

  save({ workbook, number, base, slots, changed, first }: NewState) {
    const state: State = {
      workbook,
      number,
      time: Date.now(),
      pieces: Object.fromEntries(
        slots.map((slot, i) => {
          const piece = changed.get(slot);
          const old = base?.pieces[slot];
          if (piece === undefined && !old) throw new Error(`nothing for ${slot}`);
          return [slot, piece === undefined ? (old as [number, number, number]) : [number, i, piece.length]];
        }),
      ),
    };
    const done = this.gate.then(() => {
      const fault = this.faults.shift();
      if (fault) throw Object.assign(new Error("no"), { name: fault });
      this.states.set(number, state);
      this.written.push([...changed.keys()].filter((slot) => slots.includes(slot)));
      if (first) this.firsts++;
      for (const [slot, piece] of changed) this.pieces.set(`${number}/${slot}`, piece);
    });
    return { state, done };
  }

  async tidy() {}

  async purge() {
    this.purged++;
  }

  /** The cells of the sheet in the newest state. */
  cells(): Cells {
    const state = this.states.get(Math.max(...this.states.keys())) as State;
    const pieces = Object.entries(state.pieces).map(([slot, [number]]) => {
      return [slot, this.pieces.get(`${number}/${slot}`) ?? "missing"] as const;
    });
    return workbookOf(new Map(pieces)).sheets.s?.cellData as Cells;
  }
}

const SOON = 1000;

describe("the recorder", () => {
  let sheet: FakeSheet;
  let store: FakeStore;
  let recorder: Recorder;
  let said: string[];
  beforeEach(() => {
    vi.useFakeTimers();
    sheet = new FakeSheet();
    store = new FakeStore();
    said = [];
  });
  afterEach(() => {
    recorder.drop();
    vi.useRealTimers();
  });

  const record = (given: Partial<Recorded> = {}) => {
    const first = () => ({ workbook: { id: "w", name: "W", opened: 0, fileSize: 0 }, file: null });
    const of = { workbook: "w", kept: null, lastNumber: 0, first, atOnce: false, ...given };
    recorder = new Recorder(store, sheet, of, () => said.push(recorder.recording.is));
  };
  const pass = (time: number) => vi.advanceTimersByTimeAsync(time);

  it("keeps nothing of a workbook that nobody has changed", async () => {
    record();
    sheet.write(3, "grown by itself", false);
    await pass(60_000);
    expect(store.states.size).toBe(0);
    expect(recorder.recording.is).toBe("untouched");
  });

  it("keeps a workbook at once where that is wanted", async () => {
    record({ atOnce: true });
    await pass(1);
    expect(store.cells()).toEqual({ 0: { 0: { v: "first" } } });
    expect(store.firsts).toBe(1);
  });

  it("keeps each edit within a second, also when they never stop", async () => {
    record();
    for (let i = 1; i <= 50; i++) {
      sheet.write(i, i);
      await pass(100);
      const kept = store.states.size > 0 ? Object.keys(store.cells()).length - 1 : 0;
      expect(i - kept).toBeLessThanOrEqual(SOON / 100);
    }
    await pass(SOON);
    expect(Object.keys(store.cells())).toHaveLength(51);
    expect(recorder.recording.is).toBe("kept");
  });

  it("puts down only what has changed", async () => {
    sheet = new FakeSheet(Object.fromEntries([0, 300, 600].map((row) => [row, { 0: { v: row } }])));
    record();
    sheet.write(1, "one");
    await pass(SOON);
    sheet.write(301, "two");
    await pass(SOON);
    expect(store.written[1]).toEqual(["sheet/s", "cells/s/1"]);
    expect(store.firsts).toBe(1);
    expect(store.cells()).toEqual(sheet.data.sheets.s?.cellData);
  });

  it("keeps at once, before anything else runs, when the page goes", async () => {
    record();
    sheet.write(1, "last word");
    const save = vi.spyOn(store, "save");
    window.dispatchEvent(new Event("pagehide"));
    expect(save).toHaveBeenCalledTimes(1);
    await pass(0);
    expect(store.cells()[1]).toEqual({ 0: { v: "last word" } });
  });

  /** The page goes out of sight, where fingers point or a mouse does. */
  const hide = (isTouched: boolean) => {
    vi.spyOn(document, "visibilityState", "get").mockReturnValue("hidden");
    vi.spyOn(window, "matchMedia").mockImplementation(
      (media) => ({ matches: isTouched === media.includes("coarse") }) as MediaQueryList,
    );
    document.dispatchEvent(new Event("visibilitychange"));
  };

  it.each([
    ["goes", () => window.dispatchEvent(new Event("pagehide"))],
    ["is frozen", () => document.dispatchEvent(new Event("freeze"))],
    ["is out of sight on a phone", () => hide(true)],
  ])("keeps what is being typed when the page %s, and leaves it when it is only out of sight", async (_, go) => {
    record();
    sheet.typed = "half a word";
    hide(false);
    await pass(SOON);
    expect(sheet.typed).toBe("half a word");
    expect(store.states.size).toBe(0);
    go();
    await pass(0);
    expect(store.cells()[0]).toEqual({ 0: { v: "half a word" } });
    vi.restoreAllMocks();
  });

  it("builds on no state that is not certain to stand", async () => {
    record();
    sheet.write(1, "one");
    await pass(SOON);
    // The next one is on its way and will fail; the page goes meanwhile.
    let open = () => {};
    store.gate = new Promise((next) => {
      open = next;
    });
    store.faults = ["UnknownError"];
    sheet.write(2, "two");
    await pass(SOON);
    sheet.write(3, "three");
    window.dispatchEvent(new Event("pagehide"));
    open();
    await pass(0);
    expect(store.cells()).toEqual(sheet.data.sheets.s?.cellData);
  });

  it("says that the storage is full, keeps trying, and says when all is kept", async () => {
    record();
    store.faults = ["QuotaExceededError", "QuotaExceededError"];
    sheet.write(1, "one");
    await pass(SOON);
    expect(store.purged).toBe(1);
    expect(recorder.recording).toMatchObject({ is: "failed", fault: { reason: "full" } });
    await pass(60_000);
    expect(recorder.recording.is).toBe("kept");
    expect(store.cells()[1]).toEqual({ 0: { v: "one" } });
  });

  it("makes room by what was removed before it says that there is none", async () => {
    record();
    store.faults = ["QuotaExceededError"];
    sheet.write(1, "one");
    await pass(SOON);
    expect(said).not.toContain("failed");
    expect(recorder.recording.is).toBe("kept");
  });

  it("puts everything down anew when the browser has thrown it away", async () => {
    record();
    sheet.write(1, "one");
    await pass(SOON);
    store.states.clear();
    store.pieces.clear();
    store.epoch++;
    sheet.write(2, "two");
    await pass(SOON);
    expect(store.firsts).toBe(2);
    expect(store.cells()).toEqual(sheet.data.sheets.s?.cellData);
  });

  it("goes on from the state that a workbook was opened with", async () => {
    record();
    sheet.write(1, "one");
    await pass(SOON);
    recorder.drop();
    const state = store.states.get(1) as State;
    const pieces = new Map(Object.keys(state.pieces).map((slot) => [slot, store.pieces.get(`1/${slot}`) ?? ""]));
    sheet = new FakeSheet(workbookOf(pieces).sheets.s?.cellData as Cells, "another unit");
    record({ kept: { state, pieces }, lastNumber: 4 });
    sheet.write(2, "two");
    await pass(SOON);
    expect([...store.states.keys()]).toEqual([1, 5]);
    expect(store.firsts).toBe(1);
    expect(Object.keys(store.cells())).toEqual(["0", "1", "2"]);
  });

  it("keeps the last edit before it stops, and none after", async () => {
    record();
    sheet.write(1, "one");
    await recorder.stop();
    expect(store.cells()[1]).toEqual({ 0: { v: "one" } });
    sheet.write(2, "two");
    await pass(60_000);
    expect(store.states.size).toBe(1);
  });

  it("never takes another workbook for its own", async () => {
    record();
    sheet.write(1, "one");
    sheet.data = new FakeSheet({ 0: { 0: { v: "another" } } }, "another unit").data;
    await pass(SOON);
    expect(store.states.size).toBe(0);
  });
});
