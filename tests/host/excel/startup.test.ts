import { afterEach, describe, expect, it, vi } from "vitest";
import type { Runs } from "../../../src/host/excel/functionRuns";
import { isInExcel, StartUp } from "../../../src/host/excel/startup";
import { STARTUP } from "../../../src/host/settingsKeys";
import { StandIn } from "./standIn";

afterEach(() => {
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

describe("whether the page runs inside Excel", () => {
  const office = (ready: Promise<{ host: string | null }>) =>
    vi.stubGlobal("Office", { onReady: () => ready, HostType: { Excel: "Excel" } });

  it("is what Office says", async () => {
    office(Promise.resolve({ host: "Excel" }));
    expect(await isInExcel(() => {})).toBe(true);
    office(Promise.resolve({ host: null }));
    expect(await isInExcel(() => {})).toBe(false);
  });

  it("is told to be unknown after 10 seconds without an answer, and a late answer counts", async () => {
    vi.useFakeTimers();
    let answer = (_: { host: string | null }): void => {};
    office(
      new Promise((resolve) => {
        answer = resolve;
      }),
    );
    const silent = vi.fn();
    const found = isInExcel(silent);
    vi.advanceTimersByTime(9_999);
    expect(silent).not.toHaveBeenCalled();
    vi.advanceTimersByTime(1);
    expect(silent).toHaveBeenCalledTimes(1);
    answer({ host: "Excel" });
    expect(await found).toBe(true);
  });

  it("is no more wondered about once the answer has come", async () => {
    vi.useFakeTimers();
    office(Promise.resolve({ host: "Excel" }));
    const silent = vi.fn();
    await isInExcel(silent);
    vi.advanceTimersByTime(60_000);
    expect(silent).not.toHaveBeenCalled();
  });
});

/** Functions that run when they are told to. */
class ToldRuns implements Runs {
  count = 0;
  readonly areDelivered = true;
  private readonly listeners = new Set<() => void>();
  delivered = () => Promise.resolve();
  onDelivered(callback: () => void) {
    this.listeners.add(callback);
    return () => this.listeners.delete(callback);
  }
  run(): void {
    this.count++;
    for (const listener of [...this.listeners]) listener();
  }
}

/** A workbook with an add-in in it; what Excel was told about loading it. */
function workbook() {
  const standIn = new StandIn().install();
  standIn.sheet("Here");
  const set = vi.fn<(behavior: string) => Promise<void>>(async () => {});
  vi.stubGlobal("Office", { StartupBehavior: { none: "None", load: "Load" }, addin: { setStartupBehavior: set } });
  const runs = new ToldRuns();
  return { standIn, set, runs, startUp: new StartUp(runs) };
}

describe("the loading of the add-in with a workbook", () => {
  it("is asked for once a function has run in it, and not before", async () => {
    const { standIn, set, runs, startUp } = workbook();
    startUp.follow();
    expect(standIn.syncs).toBe(0);
    runs.run();
    await expect.poll(() => set.mock.calls).toEqual([["Load"]]);
    runs.run();
    expect(standIn.syncs).toBe(1);
  });

  it("is asked for where a function ran before anybody listened", async () => {
    const { set, runs, startUp } = workbook();
    runs.run();
    startUp.follow();
    await expect.poll(() => set.mock.calls).toEqual([["Load"]]);
  });

  it("is taken back for good, and given again", async () => {
    const { standIn, set, runs, startUp } = workbook();
    expect(await startUp.isRefused()).toBe(false);
    await startUp.refuse();
    expect(set.mock.calls).toEqual([["None"]]);
    expect(await startUp.isRefused()).toBe(true);
    // The workbook is opened anew, by whoever.
    const { syncs } = standIn;
    startUp.follow();
    runs.run();
    await expect.poll(() => standIn.syncs).toBe(syncs + 1);
    await new Promise((next) => setTimeout(next));
    expect(set.mock.calls).toEqual([["None"]]);
    await startUp.allow();
    expect(set.mock.calls).toEqual([["None"], ["Load"]]);
    expect(await startUp.isRefused()).toBe(false);
    expect(standIn.book.settings.get(STARTUP)).toBe("with");
  });

  it("may be refused by Excel, which is said only to who pressed for it", async () => {
    const { standIn, set, runs, startUp } = workbook();
    set.mockRejectedValue(Object.assign(new Error("no"), { code: "AccessDenied" }));
    startUp.follow();
    runs.run();
    await expect.poll(() => standIn.syncs).toBe(1);
    await expect(startUp.refuse()).rejects.toThrow(
      "Excel could not change how this workbook is opened: the workbook or the sheet is protected or open for reading only.",
    );
    expect(standIn.book.settings.get(STARTUP)).toBeUndefined();
  });
});
